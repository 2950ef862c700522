/** A choice among the values that the schema allows, a plain text, and a date. */

import { effectiveText, fieldSchema, type Path, pointer } from "../document.ts";
import { fieldLabel } from "../labels.ts";
import { edit, scenario, sealGesture } from "../store.ts";
import { tOr } from "../text.ts";
import { FaultLines, hasFault } from "./faults.tsx";

interface ChoiceProps {
  path: Path;
  /** Prefix of the catalogue keys that name the values. */
  words: string;
}

export function ChoiceField({ path, words }: ChoiceProps) {
  const id = `field${pointer(path).replaceAll("/", "-")}`;
  return (
    <div class="field">
      <label class="field-label" for={id}>
        {fieldLabel(path)}
      </label>
      <select id={id} class="select wide" value={effectiveText(scenario.value, path)} onChange={(event) => edit(path, event.currentTarget.value)}>
        {(fieldSchema(path)?.enum ?? []).map((value) => (
          <option key={value} value={value}>
            {tOr(`${words}.${value}`, value)}
          </option>
        ))}
      </select>
      <FaultLines path={path} id={`${id}-faults`} />
    </div>
  );
}

interface PlainFieldProps {
  path: Path;
}

/** What both plain fields share: they edit while one types, and one visit is one step. */
function plainField(path: Path) {
  const id = `field${pointer(path).replaceAll("/", "-")}`;
  const faulty = hasFault(path);
  return {
    id,
    faulty,
    attributes: {
      id,
      class: "text wide",
      value: effectiveText(scenario.value, path),
      "aria-invalid": faulty,
      "aria-describedby": faulty ? `${id}-faults` : undefined,
      onBlur: sealGesture,
    },
  };
}

export function TextField({ path }: PlainFieldProps) {
  const { id, faulty, attributes } = plainField(path);
  return (
    <div class={`field ${faulty ? "faulty" : ""}`}>
      <label class="field-label" for={id}>
        {fieldLabel(path)}
      </label>
      <input {...attributes} type="text" onInput={(event) => edit(path, event.currentTarget.value, `type ${id}`)} />
      <FaultLines path={path} id={`${id}-faults`} />
    </div>
  );
}

interface DateFieldProps extends PlainFieldProps {
  /** The field may be without a date. */
  optional?: boolean;
}

/** A date; while it is incomplete the document keeps the one before. */
export function DateField({ path, optional = false }: DateFieldProps) {
  const { id, faulty, attributes } = plainField(path);
  return (
    <div class={`field ${faulty ? "faulty" : ""}`}>
      <label class="field-label" for={id}>
        {fieldLabel(path)}
      </label>
      <input
        {...attributes}
        type="date"
        onInput={(event) => {
          const date = event.currentTarget.value;
          if (date || optional) edit(path, date, `type ${id}`);
        }}
      />
      <FaultLines path={path} id={`${id}-faults`} />
    </div>
  );
}
