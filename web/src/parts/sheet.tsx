/** The sheets in which an option, or the site and its weather, is edited. */

import type { ComponentChildren } from "preact";
import { useEffect, useRef } from "preact/hooks";
import { effectiveNumber, effectiveText, formByKey, letter, type Path } from "../document.ts";
import { isMeasured } from "../measured-day.ts";
import { scenario, sheet, units } from "../store.ts";
import { t } from "../text.ts";
import { clockName, compassPoint, coordinate, show, text } from "../units.ts";
import { formName } from "../words.ts";
import { Button } from "./button.tsx";
import { ChoiceField, DateField, TextField } from "./choice.tsx";
import { NumberField } from "./field.tsx";
import { Group, Rows } from "./group.tsx";
import { ShadeGroup } from "./shade.tsx";
import { WeatherGroups } from "./weather.tsx";
import { WiresGroup } from "./wires.tsx";

interface SheetProps {
  title: string;
  close?: () => void;
  /** Below which heading the sheet stands: that of the page, or that of an option. */
  level: 2 | 3;
  children: ComponentChildren;
}

/** A sheet takes the focus when it opens and gives it back when it closes; Escape closes it. */
export function Sheet({ title, level, close = () => (sheet.value = null), children }: SheetProps) {
  const Heading = `h${level}` as const;
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    const opener = document.activeElement;
    heading.current?.focus({ preventScroll: true });
    return () => {
      if (opener instanceof HTMLElement) opener.focus({ preventScroll: true });
    };
  }, []);
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
        <Heading ref={heading} tabIndex={-1}>
          {title}
        </Heading>
        <Button label={t("sheet.close")} onPress={close} />
      </div>
      {children}
    </section>
  );
}

export function OptionSheet({ option }: { option: number }) {
  const base: Path = ["options", option];
  const form = formByKey(effectiveText(scenario.value, [...base, "form"]));
  return (
    <Sheet level={3} title={t("sheet.option", { letter: letter(option), form: form ? formName(form) : "" })}>
      <Group title="group.rows">
        <Rows base={base} rows={[["rows.rowSpacing_m"], ["rows.vineSpacing_m"]]} />
      </Group>
      <WiresGroup option={option} />
      <Group title="group.pruning">
        <Rows base={base} rows={[["training.armsPerVine", "count"], ["shoots.perMetre"]]} />
        <Wood base={base} />
        <Rows base={base} rows={[["training.singleArmVines", "share"], ["training.youngVines", "share"], ["training.missingVines", "share"], ["training.blindNodes", "share"]]} />
      </Group>
      <Group title="group.growth">
        <Rows base={base} rows={[["leaves.area_m2_per_m"], ["leaves.blade_cm2"], ["leaves.laterals", "share"], ["shoots.length_m"], ["shoots.internode_cm"], ["shoots.habit", "share"], ["shoots.start_deg"]]} />
        <ChoiceField path={[...base, "leaves", "water"]} words="water" />
      </Group>
      <Group title="group.canopy">
        <Rows
          base={base}
          rows={[
            ["shoots.thinned", "share"],
            ["shoots.positioning", "share"],
            ["shoots.combedDown", "share"],
            ["shoots.turnedDown", "share"],
            ["shoots.trimTop_m"],
            ["shoots.trimSide_m"],
            ["shoots.skirt_m"],
            ["leaves.removedMorning", "share"],
            ["leaves.removedAfternoon", "share"],
            ["leaves.removedFrom_m"],
            ["leaves.removedTo_m"],
          ]}
        />
        <DateField path={[...base, "leaves", "removedOn"]} optional />
        <p class="small" role="note">{t("caution.leaves")}</p>
      </Group>
      <ShadeGroup base={base} />
      <Group title="group.crop">
        <Rows base={base} rows={[["bunches.perShoot", "count"], ["bunches.mass_g"]]} />
      </Group>
    </Sheet>
  );
}

/** Spurs or canes and what belongs to them; arms that spread have sizes of their own. */
function Wood({ base }: { base: Path }) {
  const training: Path = [...base, "training"];
  const chosen = (field: string) => effectiveText(scenario.value, [...training, field]);
  return (
    <>
      <ChoiceField path={[...training, "wood"]} words="wood" />
      {chosen("wood") === "spurs" && <Rows base={training} rows={[["spurSpacing_m"]]} />}
      {chosen("wood") === "canes" && <ChoiceField path={[...training, "caneLayout"]} words="caneLayout" />}
      {chosen("wood") === "canes" && chosen("caneLayout") !== "along" && <Rows base={training} rows={[["caneNodes", "count"]]} />}
      <ChoiceField path={[...training, "armLayout"]} words="armLayout" />
      {chosen("armLayout") === "spread" && <Rows base={training} rows={[["headHeight_m"], ["armLength_m"], ["armRise_deg"], ["bareBase", "share"]]} />}
    </>
  );
}

export function SiteSheet() {
  return (
    <Sheet level={2} title={t("sheet.site")}>
      <WeatherGroups />
      <Group title="group.place">
        <TextField path={["name"]} />
        {isMeasured(scenario.value) ? <PlaceOfFile /> : <Rows base={["site"]} rows={[["latitude_deg"], ["longitude_deg"], ["elevation_m"], ["utcOffset_h"]]} />}
        <Rows base={["site"]} rows={[["slope_deg"]]} />
        <NumberField path={["site", "aspect_deg"]} words={compassPoint} />
        <p class="small" role="note">{t("caution.north")}</p>
        {effectiveNumber(scenario.value, ["site", "slope_deg"]) > 0 && <p class="small" role="note">{t("caution.slope")}</p>}
        <ChoiceField path={["site", "floor"]} words="floor" />
      </Group>
      <Group title="group.fruit">
        <ChoiceField path={["fruit", "colour"]} words="colour" />
        <Rows base={["fruit"]} rows={[["diameter_mm"], ["compactness", "share"]]} />
        <ChoiceField path={["season", "growth"]} words="growth" />
        {effectiveText(scenario.value, ["season", "growth"]) === "by-date" &&
          ["fruitSet", "veraison", "harvest"].map((stage) => <DateField key={stage} path={["season", stage]} optional />)}
      </Group>
      <Group title="group.limits">
        <Rows base={["limits"]} rows={[["watch_C"], ["hot_C"], ["burn_C"]]} />
        <p class="small" role="note">{t("caution.limits")}</p>
      </Group>
    </Sheet>
  );
}

/** The light of a measured day belongs to the sun of its place: place and clock are told, not edited. */
function PlaceOfFile() {
  const of = (field: string) => effectiveNumber(scenario.value, ["site", field]);
  return (
    <p class="small">
      {t("measured.place", {
        latitude: coordinate(of("latitude_deg"), "latitude"),
        longitude: coordinate(of("longitude_deg"), "longitude"),
        elevation: text(show(of("elevation_m"), "m", units.value, 0)),
        clock: clockName(of("utcOffset_h")),
      })}
    </p>
  );
}
