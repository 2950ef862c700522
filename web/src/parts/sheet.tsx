/** The sheets in which an option, or the site and its weather, is edited. */

import type { ComponentChildren } from "preact";
import { useEffect, useRef } from "preact/hooks";
import { effective, effectiveText, formByKey, letter, type Path } from "../document.ts";
import { scenario, sheet } from "../store.ts";
import { t, type TextKey } from "../text.ts";
import { compassPoint } from "../units.ts";
import { Button } from "./button.tsx";
import { ChoiceField, DateField, TextField } from "./choice.tsx";
import { NumberField } from "./field.tsx";

interface SheetProps {
  title: string;
  children: ComponentChildren;
}

/** A sheet takes the focus when it opens and gives it back when it closes; Escape closes it. */
function Sheet({ title, children }: SheetProps) {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    const opener = document.activeElement;
    heading.current?.focus({ preventScroll: true });
    return () => {
      if (opener instanceof HTMLElement) opener.focus({ preventScroll: true });
    };
  }, []);
  const close = () => (sheet.value = null);
  return (
    <section
      class="sheet"
      aria-label={title}
      data-testid="sheet"
      onKeyDown={(event) => {
        if (event.key === "Escape") close();
      }}
    >
      <div class="sheet-head">
        <h3 ref={heading} tabIndex={-1}>
          {title}
        </h3>
        <Button label={t("sheet.close")} onPress={close} />
      </div>
      {children}
    </section>
  );
}

function Group({ title, children }: { title: TextKey; children: ComponentChildren }) {
  return (
    <fieldset class="group">
      <legend>{t(title)}</legend>
      {children}
    </fieldset>
  );
}

/** Number fields in a row: paths below a base, with the unit where the schema's does not do. */
type Row = [path: string, unit?: "share"];

function Rows({ base, rows }: { base: Path; rows: Row[] }) {
  return (
    <>
      {rows.map(([path, unit]) => (
        <NumberField key={path} path={[...base, ...path.split(".")]} {...(unit ? { unit } : {})} />
      ))}
    </>
  );
}

export function OptionSheet({ option }: { option: number }) {
  const base: Path = ["options", option];
  const form = formByKey(effectiveText(scenario.value, [...base, "form"]));
  return (
    <Sheet title={t("sheet.option", { letter: letter(option), form: form?.name ?? "" })}>
      <Group title="group.rows">
        <Rows base={base} rows={[["rows.rowSpacing_m"], ["rows.vineSpacing_m"]]} />
      </Group>
      <Group title="group.trellis">
        <WireHeights base={base} />
      </Group>
      <Group title="group.pruning">
        <Rows base={base} rows={[["training.armsPerVine"], ["training.spurSpacing_m"], ["shoots.perMetre"]]} />
      </Group>
      <Group title="group.canopy">
        <Rows
          base={base}
          rows={[
            ["leaves.area_m2_per_m"],
            ["leaves.removedMorning", "share"],
            ["leaves.removedAfternoon", "share"],
            ["shoots.positioning", "share"],
            ["shoots.combedDown", "share"],
            ["shoots.length_m"],
            ["shoots.trimTop_m"],
            ["shoots.habit", "share"],
          ]}
        />
      </Group>
      <Group title="group.crop">
        <Rows base={base} rows={[["bunches.perShoot"], ["bunches.mass_g"]]} />
      </Group>
    </Sheet>
  );
}

/** The heights of all wires in the order of the document. */
function WireHeights({ base }: { base: Path }) {
  const path: Path = [...base, "trellis", "wires"];
  const wires = effective(scenario.value, path);
  const count = Array.isArray(wires) ? wires.length : 0;
  return (
    <>
      {Array.from({ length: count }, (_, i) => (
        <NumberField key={i} path={[...path, i, "height_m"]} />
      ))}
    </>
  );
}

export function SiteSheet() {
  return (
    <Sheet title={t("sheet.site")}>
      <Group title="group.day">
        <DateField path={["weather", "date"]} />
        <Rows base={["weather"]} rows={[["airMax_C"], ["airMin_C"], ["dewPoint_C"], ["wind_ms"]]} />
        <NumberField path={["weather", "windFrom_deg"]} words={compassPoint} />
      </Group>
      <Group title="group.place">
        <TextField path={["name"]} />
        <Rows base={["site"]} rows={[["latitude_deg"], ["longitude_deg"], ["elevation_m"], ["utcOffset_h"], ["slope_deg"]]} />
        <NumberField path={["site", "aspect_deg"]} words={compassPoint} />
        <ChoiceField path={["site", "floor"]} words="floor" />
      </Group>
      <Group title="group.fruit">
        <ChoiceField path={["fruit", "colour"]} words="colour" />
        <Rows base={["fruit"]} rows={[["diameter_mm"], ["compactness", "share"]]} />
      </Group>
      <Group title="group.limits">
        <Rows base={["limits"]} rows={[["watch_C"], ["hot_C"], ["burn_C"]]} />
      </Group>
    </Sheet>
  );
}
