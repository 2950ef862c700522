/** The column of one option: what it is, its picture, its verdict, its numbers and its day. */

import { useComputed } from "@preact/signals";
import { effectiveText, formCatalogue, letter, type Path } from "../document.ts";
import { optionHook } from "../hooks.ts";
import { faultText, verdictText } from "../sentences.ts";
import { isSteady, optionResult } from "../shown.ts";
import { chooseForm, copyOption, explained, maxOptions, moveOption, optionCount, removeOption, scenario, sheet, units, whatIf } from "../store.ts";
import { t } from "../text.ts";
import { rowDirection } from "../units.ts";
import { formName } from "../words.ts";
import { Button } from "./button.tsx";
import { BunchDay } from "./bunch-day.tsx";
import { FaultLines } from "./faults.tsx";
import { NumberField } from "./field.tsx";
import { Marker, ToLeftIcon, ToRightIcon } from "./icons.tsx";
import { FruitKey } from "./legend.tsx";
import { LikenessLine } from "./likeness.tsx";
import { DayNumbers, HourNumbers, SideNumbers } from "./numbers.tsx";
import { PaneView } from "./pane.tsx";
import { Explanation } from "./explanation.tsx";
import { OptionSheet } from "./sheet.tsx";
import { DayStrip } from "./strip.tsx";
import { Sureness } from "./sureness.tsx";

export function OptionColumn({ option, column }: { option: number; column: number }) {
  const state = useComputed(() => (isSteady(option) ? "column steady" : "column"));
  return (
    <article class={state} style={{ gridColumn: String(column + 1) }} aria-label={t("option", { letter: letter(option) })} data-testid={optionHook(option)}>
      <ColumnHead option={option} />
      <PaneView option={option} />
      <div class="below-pane">
        <FruitKey />
        <BunchDay option={option} />
      </div>
      <div class="at-hour">
        <HourNumbers option={option} />
        <Sureness option={option} />
      </div>
      <Verdict option={option} />
      <DayNumbers option={option} />
      <div class="below">
        <DayStrip option={option} />
        <SideNumbers option={option} />
        {sheet.value === option && <OptionSheet option={option} />}
        {explained.value?.option === option && <Explanation option={option} number={explained.value.number} />}
      </div>
    </article>
  );
}

function ColumnHead({ option }: { option: number }) {
  const name = letter(option);
  const path: Path = ["options", option];
  const form = effectiveText(scenario.value, [...path, "form"]);
  const open = sheet.value === option;
  return (
    <div class="column-head">
      <div class="column-title">
        <h2 class="letter">
          <Marker option={option} />
          <span class="visually-hidden">{t("option", { letter: "" })}</span>
          {name}
        </h2>
        <select
          class="select form"
          aria-label={t("option.form", { letter: name })}
          value={form}
          onChange={(event) => chooseForm(option, event.currentTarget.value)}
          data-testid={optionHook(option, "form")}
        >
          {formCatalogue.map((one) => (
            <option key={one.key} value={one.key}>
              {formName(one)}
            </option>
          ))}
        </select>
      </div>
      <div class="column-tools">
        <Button
          label={t("option.edit")}
          spoken={t("option.edit.label", { letter: name })}
          class="quiet"
          expanded={open}
          onPress={() => (sheet.value = open ? null : option)}
          hook={optionHook(option, "edit")}
        />
        {optionCount.value < maxOptions && (
          <Button
            label={t("option.copy")}
            spoken={t("option.copy.label", { letter: name })}
            class="quiet"
            onPress={() => copyOption(option)}
            hook={optionHook(option, "copy")}
          />
        )}
        {optionCount.value < maxOptions && (
          <Button
            label={t("option.whatIf")}
            spoken={t("option.whatIf.label", { letter: name })}
            class="quiet"
            onPress={() => whatIf(option)}
            hook={optionHook(option, "what-if")}
          />
        )}
        {optionCount.value > 1 && (
          <Button
            label={t("option.remove")}
            spoken={t("option.remove.label", { letter: name })}
            class="quiet"
            onPress={() => removeOption(option)}
            hook={optionHook(option, "remove")}
          />
        )}
        {option > 0 && (
          <Button label={t("option.left", { letter: name })} class="quiet" onPress={() => moveOption(option, -1)} hook={optionHook(option, "left")}>
            <ToLeftIcon />
          </Button>
        )}
        {option < optionCount.value - 1 && (
          <Button label={t("option.right", { letter: name })} class="quiet" onPress={() => moveOption(option, 1)} hook={optionHook(option, "right")}>
            <ToRightIcon />
          </Button>
        )}
      </div>
      <FaultLines path={[...path, "form"]} id={`form-${option}-faults`} />
      <LikenessLine option={option} />
      <NumberField
        path={[...path, "rows", "azimuth_deg"]}
        label={t("option.azimuth.short")}
        spoken={t("option.azimuth", { letter: name })}
        words={rowDirection}
        hook={optionHook(option, "azimuth")}
      />
    </div>
  );
}

function Verdict({ option }: { option: number }) {
  const result = optionResult(option);
  return (
    <div class="follows">
      <p class="verdict" data-testid={optionHook(option, "verdict")}>
        {result ? verdictText(result.verdict, units.value) : t("verdict.waiting")}
      </p>
      {result && result.notices.length > 0 && (
        <ul class="notices design" aria-label={t("option.notices")} data-testid={optionHook(option, "notices")}>
          {result.notices.map((notice) => (
            <li key={notice.code}>{faultText(notice, units.value)}</li>
          ))}
        </ul>
      )}
    </div>
  );
}
