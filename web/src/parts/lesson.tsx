/** The open lesson beside the pictures: what is asked, the reader's guess, what the run shows, and what it means. */

import { useEffect, useRef } from "preact/hooks";
import { lessonHook } from "../hooks.ts";
import { firstLook, type Lesson } from "../lessons/catalogue.ts";
import { beginAnew, goTo, guess, leaveLesson, lesson, notes, runLesson, running, seen, stage, stageIndex, takeOver, tried, tryOut } from "../lessons/lesson.ts";
import { borneOut } from "../lessons/readings.ts";
import { guessText, lessonText, stageName } from "../lessons/words.ts";
import { pending } from "../engine.ts";
import { projected, readOnly } from "../store.ts";
import { t, type TextKey } from "../text.ts";
import { Button } from "./button.tsx";
import { CalculationState } from "./comparison.tsx";
import { printLesson } from "./lesson-sheet.tsx";
import { LessonTable } from "./lesson-table.tsx";

export function LessonPanel() {
  const now = lesson.value;
  if (!now) return null;
  return (
    <section class="lesson" aria-labelledby="lesson" data-testid="lesson" data-lesson={now.key} data-stage={stage.value?.key} data-seen={String(seen.value !== null)}>
      <div class="lesson-head">
        <p class="small">{t("lesson")}</p>
        <CalculationState />
        <Button label={t("lesson.leave")} class="quiet" onPress={leaveLesson} hook="lesson-leave" />
      </div>
      <h1 id="lesson">{lessonText(now, "title")}</h1>
      <Way of={now} />
      <StageBody key={`${now.key} ${stageIndex.value}`} of={now} />
      <Onward of={now} />
      {projected.value && (
        <p class="small">
          {t("lesson.invented")} {seen.value && t("lesson.oneRun")}
        </p>
      )}
    </section>
  );
}

/** The stages, by which one can go back to what was already seen. */
function Way({ of }: { of: Lesson }) {
  const at = stageIndex.value;
  return (
    <ol class="lesson-way" aria-label={t("lesson.way")}>
      {of.stages.map(({ key }, i) => (
        <li key={key} aria-current={i === at ? "step" : undefined} class={i < at ? "passed" : ""}>
          {i < at ? <Button label={stageName(of, i)} class="quiet" onPress={() => goTo(i)} /> : stageName(of, i)}
        </li>
      ))}
    </ol>
  );
}

/** A new stage takes the focus and comes into sight, so that it is read out and the keyboard goes on from there. */
function StageBody({ of }: { of: Lesson }) {
  const heading = useRef<HTMLHeadingElement>(null);
  const key = of.stages[stageIndex.value]?.key ?? "";
  useEffect(() => {
    heading.current?.focus({ preventScroll: true });
    heading.current?.closest(".lesson")?.scrollIntoView({ block: "start" });
  }, []);
  return (
    <div class="lesson-stage">
      <h2 ref={heading} tabIndex={-1}>
        {stageName(of, stageIndex.value)}
      </h2>
      <p class="lesson-text">{lessonText(of, key)}</p>
      {key === "predict" && <Guesses of={of} />}
      {key === "explain" && <Outcome of={of} />}
      <LessonTable of={of} />
      {key === "explain" && <Cautions of={of} />}
      {key === "mind" && <Mind of={of} />}
    </div>
  );
}

/** The vote; once the run has been seen it stands. */
function Guesses({ of }: { of: Lesson }) {
  return (
    <fieldset class="lesson-guesses">
      <legend class="visually-hidden">{t("lesson.guesses")}</legend>
      {of.guesses.map((one) => (
        <label key={one} class="lesson-guess">
          <input
            type="radio"
            name="guess"
            value={one}
            checked={guess.value === one}
            disabled={seen.value !== null}
            onChange={() => (guess.value = one)}
            data-testid={lessonHook("guess", one)}
          />
          <span>{guessText(of, one)}</span>
        </label>
      ))}
    </fieldset>
  );
}

/** What the reader said beside what the run says. */
function Outcome({ of }: { of: Lesson }) {
  if (!seen.value) return null;
  const found = borneOut(of, seen.value);
  const said = guess.value;
  return (
    <p class="lesson-outcome" data-testid="lesson-outcome" data-found={found}>
      {said && t("lesson.said", { guess: guessText(of, said) })} {t(said === found ? "lesson.foundSame" : "lesson.found", { guess: guessText(of, found) })}
    </p>
  );
}

function Cautions({ of }: { of: Lesson }) {
  return (
    <>
      <ul class="lesson-cautions small" role="note">
        {of.cautions.map((caution) => (
          <li key={caution}>{t(caution as TextKey)}</li>
        ))}
      </ul>
      <details>
        <summary>{t("lesson.sources")}</summary>
        <p class="small">{lessonText(of, "sources")}</p>
      </details>
    </>
  );
}

/** The box of doubts: what to try out, room to write, and where to go from here. */
function Mind({ of }: { of: Lesson }) {
  return (
    <>
      <div class="lesson-tries" role="group" aria-label={t("lesson.tries")}>
        {of.tries.map(({ key }) => (
          <Button
            key={key}
            label={lessonText(of, `try.${key}`)}
            pressed={tried.value === key}
            onPress={() => tryOut(tried.value === key ? null : key)}
            hook={lessonHook("try", key)}
          />
        ))}
      </div>
      <label class="lesson-notes">
        <span class="field-label">{t("lesson.notes")}</span>
        <textarea class="text" rows={3} value={notes.value} onInput={(event) => (notes.value = event.currentTarget.value)} data-testid="lesson-notes" />
      </label>
      <div class="lesson-after">
        {!readOnly && <Button label={t("lesson.takeOver")} onPress={takeOver} hook="lesson-take-over" />}
        <Button label={t("lesson.anew")} onPress={beginAnew} hook="lesson-anew" />
      </div>
    </>
  );
}

/** Back and on. A guess is committed to before the run, and the run is seen before it is explained. */
function Onward({ of }: { of: Lesson }) {
  const at = stageIndex.value;
  const key = of.stages[at]?.key;
  const busy = running.value || (at >= firstLook(of) && !seen.value && pending.value);
  return (
    <div class="lesson-onward">
      <Button label={t("lesson.back")} disabled={at === 0} onPress={() => goTo(at - 1)} hook="lesson-back" />
      {key === "run" || (at >= firstLook(of) && !seen.value) ? (
        <Button label={t(busy ? "lesson.running" : "lesson.run")} class="onward" disabled={busy} onPress={() => void runLesson()} hook="lesson-run" />
      ) : (
        at < of.stages.length - 1 && (
          <Button
            label={t(key === "predict" ? "lesson.commit" : "lesson.next")}
            class="onward"
            disabled={key === "predict" && guess.value === null}
            onPress={() => goTo(at + 1)}
            hook="lesson-next"
          />
        )
      )}
      <Button label={t("lesson.print")} class="quiet" onPress={() => void printLesson()} hook="lesson-print" />
    </div>
  );
}
