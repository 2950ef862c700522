/** A titled group of fields, and number fields in a row. */

import type { ComponentChildren } from "preact";
import type { Path } from "../document.ts";
import { t, type TextKey } from "../text.ts";
import { NumberField } from "./field.tsx";

export function Group({ title, children }: { title: TextKey; children: ComponentChildren }) {
  return (
    <fieldset class="group">
      <legend>{t(title)}</legend>
      {children}
    </fieldset>
  );
}

/** Number fields: paths below a base, with the unit where the schema's does not do. */
export type Row = [path: string, unit?: "share" | "count"];

export function Rows({ base, rows }: { base: Path; rows: Row[] }) {
  return (
    <>
      {rows.map(([path, unit]) => (
        <NumberField key={path} path={[...base, ...path.split(".")]} {...(unit ? { unit } : {})} />
      ))}
    </>
  );
}
