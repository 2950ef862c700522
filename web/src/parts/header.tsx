/** The head of the page: what is compared, under which sun, and the tools that act on all of it. */

import { effectiveNumber, effectiveText, type JsonObject, rawOptions } from "../document.ts";
import { language, languages, type Language, setLanguage } from "../language.ts";
import { lesson, stage } from "../lessons/lesson.ts";
import { isMeasured } from "../measured-day.ts";
import { canRedo, canUndo, projected, readOnly, redoEdit, scenario, setUnits, sheet, switchTheme, theme, undoEdit, units } from "../store.ts";
import { t } from "../text.ts";
import { coordinate, longDate, rowDirection, show, text, type UnitSystem } from "../units.ts";
import { Button } from "./button.tsx";
import { ProjectorIcon, RedoIcon, ThemeIcon, UndoIcon } from "./icons.tsx";
import { LessonList } from "./lesson-list.tsx";
import { KeepSheets, KeepTools } from "./keep-tools.tsx";
import { SiteSheet } from "./sheet.tsx";

export function Header() {
  const document = scenario.value;
  // A note on a design day would mislead beside a measured one, which names its own source.
  const note = isMeasured(document) ? t("measured.source", { source: effectiveText(document, ["weather", "source"]) }) : effectiveText(document, ["note"]);
  return (
    <header class="top">
      <p class="brand">{t("brand")}</p>
      <div class="place">
        {!lesson.value && <h1>{effectiveText(document, ["name"])}</h1>}
        <p class="facts" data-testid="facts">{facts(document, units.value).join(" · ")}</p>
        <div class="place-more">
          {note && (
            <p class="note" data-testid="note">
              {note}
            </p>
          )}
          {(!lesson.value || stage.value?.key === "mind") && (
            <Button
              label={t("site")}
              class="quiet"
              expanded={sheet.value === "site"}
              onPress={() => (sheet.value = sheet.value === "site" ? null : "site")}
              hook="site"
            />
          )}
        </div>
      </div>
      <div class="tools" role="group" aria-label={t("tools")}>
        {!readOnly && !lesson.value && <KeepTools />}
        {!readOnly && (
          <Button
            label={t("lessons")}
            expanded={sheet.value === "lessons"}
            onPress={() => (sheet.value = sheet.value === "lessons" ? null : "lessons")}
            hook="lessons"
          />
        )}
        <Button label={t("undo")} onPress={undoEdit} disabled={!canUndo.value} hook="undo" shortcut="Control+Z">
          <UndoIcon />
        </Button>
        <Button label={t("redo")} onPress={redoEdit} disabled={!canRedo.value} hook="redo" shortcut="Control+Shift+Z">
          <RedoIcon />
        </Button>
        <LanguageChoice />
        <div class="switch" role="group" aria-label={t("units")}>
          <UnitButton system="metric" />
          <UnitButton system="us" />
        </div>
        <Button label={t(theme.value === "light" ? "theme.toDark" : "theme.toLight")} onPress={switchTheme} hook="theme">
          <ThemeIcon />
        </Button>
        <Button label={t("theme.projector")} pressed={projected.value} onPress={() => (projected.value = !projected.peek())} hook="projector">
          <ProjectorIcon />
        </Button>
      </div>
      {sheet.value === "site" && <SiteSheet />}
      {sheet.value === "lessons" && <LessonList />}
      <KeepSheets />
    </header>
  );
}

/** Place, day, heat and row direction in a few words. */
function facts(document: JsonObject, system: UnitSystem): string[] {
  const azimuths = rawOptions(document).map((_, i) => effectiveNumber(document, ["options", i, "rows", "azimuth_deg"]));
  const directions = new Set(azimuths.map(rowDirection));
  return [
    t("place", {
      latitude: coordinate(effectiveNumber(document, ["site", "latitude_deg"]), "latitude"),
      longitude: coordinate(effectiveNumber(document, ["site", "longitude_deg"]), "longitude"),
    }),
    t(isMeasured(document) ? "date.measured" : "date.design", { date: longDate(effectiveText(document, ["weather", "date"])) }),
    t("airMax", { temperature: text(show(effectiveNumber(document, ["weather", "airMax_C"]), "degC", system, 0)) }),
    directions.size === 1 ? t("rows.same", { direction: [...directions].join("") }) : t("rows.differ"),
  ];
}

function LanguageChoice() {
  return (
    <select class="select" aria-label={t("language")} value={language.value} onChange={(event) => setLanguage(event.currentTarget.value as Language)} data-testid="language">
      {Object.entries(languages).map(([tag, name]) => (
        <option key={tag} value={tag} lang={tag}>
          {name}
        </option>
      ))}
    </select>
  );
}

function UnitButton({ system }: { system: UnitSystem }) {
  return (
    <Button label={t(`units.${system}`)} pressed={units.value === system} onPress={() => setUnits(system)} hook={`units-${system}`} />
  );
}
