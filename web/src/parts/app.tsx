/** The page. */

import { useEffect, useRef } from "preact/hooks";
import { answer, engineState, progress, startEngine } from "../engine.ts";
import { fits, watchLayout } from "../layout.ts";
import { firstLook } from "../lessons/catalogue.ts";
import { lesson, stage, stageIndex } from "../lessons/lesson.ts";
import { letter } from "../document.ts";
import { optionName, optionResult } from "../shown.ts";
import { optionCount, scenario, shownOption, units } from "../store.ts";
import { verdictText } from "../sentences.ts";
import { loadingText } from "../loading.ts";
import { t } from "../text.ts";
import { holdFrame, viewGeneration, viewState } from "../view.ts";
import { keepRowsWhole } from "../whole-rows.ts";
import { Button } from "./button.tsx";
import { Cautions } from "./cautions.tsx";
import { CanopyTable } from "./canopy.tsx";
import { OptionColumn } from "./column.tsx";
import { Comparison } from "./comparison.tsx";
import { DayCharts } from "./day-charts.tsx";
import { Directions } from "./directions.tsx";
import { FaultSummary } from "./faults.tsx";
import { Header } from "./header.tsx";
import { Marker } from "./icons.tsx";
import { KeepNotices } from "./keep-notices.tsx";
import { LessonPanel } from "./lesson.tsx";
import { Legend } from "./legend.tsx";
import { DayInShort } from "./numbers.tsx";
import { SeasonPart } from "./season.tsx";
import { SunRibbon } from "./ribbon.tsx";
import { HourTable } from "./table.tsx";
import { Weigh } from "./weigh.tsx";
import { WayChoice } from "./ways.tsx";

export function App() {
  if (engineState.value.phase === "unsupported") return <WithoutEngine />;
  const now = lesson.value;
  return (
    <>
      <Header />
      <main data-lesson={lessonPhase()}>
        <KeepNotices />
        <EngineNotice />
        <FaultSummary />
        <div class="beside">
          {now ? <LessonPanel /> : <Comparison />}
          <div class="looked-at">
            <OptionSwitch />
            <WayChoice />
            <Columns />
            <Legend />
          </div>
        </div>
        {!now && <OwnTables />}
        <Cautions />
      </main>
      <SunRibbon />
    </>
  );
}

/** What a lesson leaves to the reader: the answer is not shown before the guess, and only at the end all is his. */
function lessonPhase(): "asking" | "looking" | "trying" | undefined {
  const now = lesson.value;
  if (!now) return undefined;
  if (stageIndex.value < firstLook(now)) return "asking";
  return stage.value?.key === "mind" ? "trying" : "looking";
}

function OwnTables() {
  return (
    <>
      <DayCharts />
      <Weigh />
      <CanopyTable />
      <Directions />
      <SeasonPart />
      <HourTable />
    </>
  );
}

/** A browser that cannot compute gets the reason and nothing that would not work. */
function WithoutEngine() {
  return (
    <>
      <header class="top">
        <p class="brand">{t("brand")}</p>
      </header>
      <main>
        <p class="notice" role="alert">
          {t("unsupported")}
        </p>
        <Cautions />
      </main>
    </>
  );
}

/** All options beside each other, or the chosen one where they do not fit, over the frame of the view. */
function Columns() {
  const grid = useRef<HTMLDivElement>(null);
  useEffect(() => (grid.current ? watchLayout(grid.current) : undefined), []);
  useEffect(() => keepRowsWhole(() => [...(grid.current?.querySelectorAll(":is(.now, .sides) tbody tr") ?? [])].map((row) => [row])), []);
  const all = Array.from({ length: optionCount.value }, (_, i) => i);
  const shown = fits.value ? all : [shownOption.value];
  const pictures = viewState.value.phase !== "no-canvas";
  return (
    <div ref={grid} class={`columns ${pictures ? "" : "without-pictures"}`} data-count={shown.length} aria-label={t("options")} role="group">
      {pictures && (
        <iframe key={viewGeneration.value} ref={holdFrame} class="view" src="view.html" title="" inert aria-hidden="true" tabIndex={-1} />
      )}
      {shown.map((option, column) => (
        <OptionColumn key={option} option={option} column={column} />
      ))}
    </div>
  );
}

/** Where only one column fits: the choice among the options, each with its verdict. */
function OptionSwitch() {
  if (fits.value || optionCount.value < 2) return null;
  return (
    <div class="option-switch" role="group" aria-label={t("option.switch")}>
      {Array.from({ length: optionCount.value }, (_, option) => {
        const result = optionResult(option);
        return (
          <button key={option} type="button" class="option-tab" aria-pressed={shownOption.value === option} onClick={() => (shownOption.value = option)}>
            <span class="letter">
              <Marker option={option} />
              {letter(option)}
            </span>
            <span class="option-tab-name">{optionName(scenario.value, option)}</span>
            <DayInShort option={option} />
            {shownOption.value !== option && result && <span class="option-tab-verdict">{verdictText(result.verdict, units.value)}</span>}
          </button>
        );
      })}
    </div>
  );
}

/** What there is to say about the engine while it is not simply running. */
function EngineNotice() {
  const state = engineState.value;
  switch (state.phase) {
    case "running":
      return answer.value ? null : <Waiting text={t("loading.first")} done={progress.value} />;
    case "loading":
      return <Waiting text={loadingText("loading.engine", state.progress)} done={state.progress.total ? state.progress.loaded / state.progress.total : 0} />;
    case "unsupported":
      return null;
    case "crashed":
    case "unavailable":
      return (
        <div class="notice" role="alert">
          <p>{t(state.phase, { reason: state.reason })}</p>
          <Button label={t(state.phase === "crashed" ? "restart" : "retry")} onPress={startEngine} hook="restart" />
        </div>
      );
  }
}

function Waiting({ text, done }: { text: string; done: number }) {
  return (
    <div class="notice loading">
      <p>{text}</p>
      <progress aria-label={text} max={1} value={done} />
    </div>
  );
}
