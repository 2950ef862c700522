/**
 * One number of the document: a slider and a typed box that edit the same value, its unit, and what
 * the simulation says is wrong with it. Range and step come from the schema.
 */

import { useSignal } from "@preact/signals";
import { effectiveNumber, fieldSchema, type Path, pointer } from "../document.ts";
import { fieldLabel } from "../labels.ts";
import { edit, scenario, sealGesture, units } from "../store.ts";
import { t } from "../text.ts";
import { fromBox, show, text, toBox, typedNumber, unitName } from "../units.ts";
import { FaultLines, hasFault } from "./faults.tsx";

interface NumberFieldProps {
  path: Path;
  /** A shorter visible label than the field's own. */
  label?: string;
  /** The label that assistive technology hears, when the visible one says too little. */
  spoken?: string;
  /** Overrides the unit of the schema, such as "share" for a share shown as a percentage. */
  unit?: string;
  /** Words that say what the value means, such as the direction of an azimuth. */
  words?: (value: number) => string;
  hook?: string;
}

export function NumberField({ path, label = fieldLabel(path), spoken, unit, words, hook }: NumberFieldProps) {
  const schema = fieldSchema(path);
  const min = schema?.minimum ?? 0;
  const max = schema?.maximum ?? 1;
  const step = schema?.["x-step"] ?? 1;
  const kind = unit ?? schema?.["x-unit"] ?? "1";
  const value = effectiveNumber(scenario.value, path);
  const id = `field${pointer(path).replaceAll("/", "-")}`;
  const faulty = hasFault(path);
  const name = spoken ?? label;
  const plain = text(show(value, kind, units.value, decimals(step, kind)));
  return (
    <div class={`field ${faulty ? "faulty" : ""}`}>
      <label class="field-label" for={id}>
        {label}
      </label>
      <input
        id={id}
        class="slider"
        type="range"
        min={min}
        max={max}
        step={step}
        value={value}
        aria-label={name}
        aria-valuetext={words ? t("field.text", { value: plain, direction: words(value) }) : plain}
        aria-invalid={faulty}
        aria-describedby={faulty ? `${id}-faults` : undefined}
        data-testid={hook}
        onInput={(event) => edit(path, Number(event.currentTarget.value), `slide ${id}`)}
        onPointerUp={sealGesture}
        onKeyUp={sealGesture}
        onBlur={sealGesture}
        onKeyDown={(event) => {
          const pages = event.key === "PageUp" ? 10 : event.key === "PageDown" ? -10 : 0;
          if (!pages) return;
          event.preventDefault();
          const next = Math.min(max, Math.max(min, value + pages * step));
          edit(path, Number(next.toFixed(9)), `slide ${id}`);
        }}
      />
      <TypedBox path={path} id={id} kind={kind} value={value} label={t("field.typed", { field: name })} faulty={faulty} {...(hook ? { hook: `${hook}-box` } : {})} />
      {words && <span class="field-words">{words(value)}</span>}
      <FaultLines path={path} id={`${id}-faults`} />
    </div>
  );
}

/** Decimals that a step needs; shares are shown as whole percentages. */
function decimals(step: number, kind: string): number | undefined {
  return kind === "deg" && step >= 1 ? 0 : undefined;
}

interface TypedBoxProps {
  path: Path;
  id: string;
  kind: string;
  value: number;
  label: string;
  faulty: boolean;
  hook?: string;
}

/** The typed box alone, for a number in a row of its kind. */
export function TypedBox({ path, id, kind, value, label, faulty, hook }: TypedBoxProps) {
  const typed = useSignal<string | null>(null);
  const parsed = typed.value === null ? value : parseNumber(typed.value);
  const wrong = Number.isNaN(parsed);
  const unit = unitName(kind, units.value);
  return (
    <span class="box">
      <input
        type="text"
        inputMode="decimal"
        autoComplete="off"
        value={typed.value ?? typedNumber(toBox(value, kind, units.value))}
        aria-label={unit && unit !== "1" ? `${label} [${unit}]` : label}
        aria-invalid={wrong || faulty}
        aria-describedby={wrong ? `${id}-typed` : faulty ? `${id}-faults` : undefined}
        data-testid={hook}
        onInput={(event) => {
          typed.value = event.currentTarget.value;
          const number = parseNumber(typed.value);
          if (!Number.isNaN(number)) edit(path, fromBox(number, kind, units.value), `type ${id}`);
        }}
        onBlur={() => {
          typed.value = null;
          sealGesture();
        }}
      />
      <span class="unit" aria-hidden="true">
        {unit === "1" ? "" : unit}
      </span>
      {wrong && (
        <span class="fault" id={`${id}-typed`} role="alert">
          {t("field.notNumber")}
        </span>
      )}
    </span>
  );
}

/** Reads a number with a point or a comma; NaN for anything else. */
function parseNumber(raw: string): number {
  const plain = raw.trim().replace(",", ".").replace("\u2212", "-");
  return plain === "" ? Number.NaN : Number(plain);
}
