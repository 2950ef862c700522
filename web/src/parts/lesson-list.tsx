/** The lessons to choose from, each with its question and how far one has got. */

import { lessonHook } from "../hooks.ts";
import { lessons } from "../lessons/catalogue.ts";
import { openLesson, progressOf } from "../lessons/lesson.ts";
import { lessonText, stageName } from "../lessons/words.ts";
import { t } from "../text.ts";
import { Button } from "./button.tsx";
import { Sheet } from "./sheet.tsx";

export function LessonList() {
  return (
    <Sheet level={2} title={t("lessons")}>
      <p class="small">{t("lessons.intro")}</p>
      <ol class="lesson-list">
        {lessons.map((one) => {
          const progress = progressOf(one.key);
          return (
            <li key={one.key}>
              <Button label={lessonText(one, "title")} class="quiet keep-name" onPress={() => openLesson(one.key)} hook={lessonHook("open", one.key)} />
              <p class="small">{lessonText(one, "about")}</p>
              {progress && progress.stage > 0 && <p class="small lesson-got">{t("lessons.at", { stage: stageName(one, progress.stage) })}</p>}
            </li>
          );
        })}
      </ol>
    </Sheet>
  );
}
