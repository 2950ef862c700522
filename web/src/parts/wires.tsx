/** The wires of an option, drawn end-on and edited one by one: whoever sets wires draws a training form. */

import { useEffect, useRef, useState } from "preact/hooks";
import { effective, effectiveNumber, effectiveText, fieldSchema, isObject, type Json, letter, type Path, pointer } from "../document.ts";
import { optionHook } from "../hooks.ts";
import { drawingWords } from "../drawing-words.ts";
import { language } from "../language.ts";
import { edit, scenario, units } from "../store.ts";
import { t, tOr } from "../text.ts";
import { compassPoint, unitName } from "../units.ts";
import { watchSection } from "../view.ts";
import { dragWires } from "../wire-drag.ts";
import { Button } from "./button.tsx";
import { FaultLines, hasFault } from "./faults.tsx";
import { TypedBox } from "./field.tsx";
import { Group } from "./group.tsx";

export function WiresGroup({ option }: { option: number }) {
  const list: Path = ["options", option, "trellis", "wires"];
  const wires = wiresAt(list);
  const most = fieldSchema(list)?.maxItems ?? 0;
  const unit = unitName("m", units.value);
  const positive = compassPoint(effectiveNumber(scenario.value, ["options", option, "rows", "azimuth_deg"]) + 90);
  return (
    <Group title="group.trellis">
      <CrossSection option={option} wires={wires.length} />
      {wires.length > 0 && <p class="small">{t("wires.drag")}</p>}
      {wires.length > 0 && (
        <table class="wires">
          <caption class="visually-hidden">{t("wires", { letter: letter(option) })}</caption>
          <thead>
            <tr>
              <th scope="col">{t("wires.role")}</th>
              <th scope="col">{t("wires.height", { unit })}</th>
              <th scope="col">{t("wires.offset", { unit, side: positive })}</th>
              <td />
            </tr>
          </thead>
          <tbody>
            {wires.map((_, i) => (
              <WireRow key={i} list={list} index={i} option={option} />
            ))}
          </tbody>
        </table>
      )}
      <FaultLines path={list} id={`wires-${option}-faults`} />
      <p class="small" role="note">{t("caution.structure")}</p>
      {wires.length < most && <Button label={t("wires.add")} onPress={() => edit(list, [...wires, nextWire(wires)])} hook={optionHook(option, "add-wire")} />}
    </Group>
  );
}

function wiresAt(list: Path): Json[] {
  const wires = effective(scenario.value, list);
  return Array.isArray(wires) ? wires : [];
}

/** A new wire lies over the row, a little above the highest one. */
function nextWire(wires: readonly Json[]): Json {
  const highest = Math.max(0.7, ...wires.map((wire) => (isObject(wire) ? Number(wire["height_m"]) || 0 : 0)));
  return { height_m: Number(Math.min(highest + 0.3, 3).toFixed(2)), offset_m: 0, role: "foliage" };
}

interface WireRowProps {
  list: Path;
  index: number;
  option: number;
}

function WireRow({ list, index, option }: WireRowProps) {
  const wire: Path = [...list, index];
  const role: Path = [...wire, "role"];
  const number = index + 1;
  const faulty = ["role", "height_m", "offset_m"].some((field) => hasFault([...wire, field])) || hasFault(wire);
  const box = (field: "height_m" | "offset_m") => {
    const path: Path = [...wire, field];
    return (
      <TypedBox
        path={path}
        id={`field${pointer(path).replaceAll("/", "-")}`}
        kind="m"
        value={effectiveNumber(scenario.value, path)}
        label={t(`wires.${field === "height_m" ? "height" : "offset"}.label`, { number })}
        faulty={hasFault(path)}
        hook={optionHook(option, `wire-${number}-${field === "height_m" ? "height" : "offset"}`)}
      />
    );
  };
  return (
    <>
      <tr class={faulty ? "faulty" : ""}>
        <td>
          <select
            class="select"
            aria-label={t("wires.role.label", { number })}
            value={effectiveText(scenario.value, role)}
            onChange={(event) => edit(role, event.currentTarget.value)}
          >
            {(fieldSchema(role)?.enum ?? []).map((value) => (
              <option key={value} value={value}>
                {tOr(`role.${value}`, value)}
              </option>
            ))}
          </select>
        </td>
        <td>{box("height_m")}</td>
        <td>{box("offset_m")}</td>
        <td>
          <Button
            label={t("wires.remove", { number })}
            class="quiet"
            onPress={() => edit(list, wiresAt(list).filter((_, i) => i !== index))}
            hook={optionHook(option, `wire-${number}-remove`)}
          >
            ×
          </Button>
        </td>
      </tr>
      {faulty && (
        <tr>
          <td colSpan={4}>
            {[wire, role, [...wire, "height_m"], [...wire, "offset_m"]].map((path) => (
              <FaultLines key={pointer(path)} path={path} id={`field${pointer(path).replaceAll("/", "-")}-faults`} />
            ))}
          </td>
        </tr>
      )}
    </>
  );
}

/** Gives a drawing the width that its texts take; in another language they may be longer. */
function widenToTexts(drawing: SVGSVGElement): void {
  const { x, y, width, height } = drawing.viewBox.baseVal;
  const ends = [...drawing.querySelectorAll("text")].map((text) => text.getBBox()).map((box) => box.x + box.width - x);
  drawing.setAttribute("viewBox", [x, y, Math.ceil(Math.max(width, ...ends)), height].join(" "));
}

/** The option end-on, looking along the row, as the view has grown it; it follows every edit. */
function CrossSection({ option, wires }: { option: number; wires: number }) {
  const place = useRef<HTMLDivElement>(null);
  const [drawn, setDrawn] = useState(false);
  useEffect(
    () =>
      watchSection(option, (svg) => {
        // Read as XML: the drawing is the program's own, and nothing in it runs.
        const read = new DOMParser().parseFromString(svg, "image/svg+xml").documentElement;
        read.setAttribute("aria-hidden", "true");
        for (const text of read.querySelectorAll("text")) text.textContent = drawingWords(text.textContent ?? "");
        const drawing = document.importNode(read, true) as unknown as SVGSVGElement;
        place.current?.replaceChildren(drawing);
        widenToTexts(drawing);
        setDrawn(true);
      }),
    [option, language.value],
  );
  useEffect(() => (place.current ? dragWires(place.current, ["options", option, "trellis", "wires"]) : undefined), [option]);
  return (
    <div
      ref={place}
      class="cross-section"
      role="img"
      aria-label={t(drawn ? "section.label" : "section.waiting", { letter: letter(option), wires })}
      data-testid={optionHook(option, "section")}
    />
  );
}
