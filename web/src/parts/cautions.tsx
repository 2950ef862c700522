/** How to read the numbers, and what the tool is not; near the results, never behind a click. */

import { answer } from "../engine.ts";
import { t, type TextKey } from "../text.ts";

const reading: TextKey[] = ["reading.lit", "reading.mean", "reading.hottest", "reading.over", "reading.worse", "reading.ranges", "reading.hours"];
const cautions: TextKey[] = ["caution.scope", "caution.people", "caution.limits", "caution.leaves", "caution.trellis"];

function Notes({ title, notes }: { title: "reading" | "cautions"; notes: TextKey[] }) {
  return (
    <section aria-labelledby={title}>
      <h2 id={title}>{t(title)}</h2>
      <ul>
        {notes.map((key) => (
          <li key={key}>{t(key)}</li>
        ))}
      </ul>
    </section>
  );
}

export function Cautions() {
  const version = answer.value?.day.modelVersion;
  return (
    <div class="notes">
      <Notes title="cautions" notes={cautions} />
      <Notes title="reading" notes={reading} />
      <p>
        {t("privacy")} {version && t("model", { version })}{" "}
        <a href="licences.txt" target="_blank" rel="noopener">
          {t("licences")}
        </a>
      </p>
    </div>
  );
}
