/** What the tool is not, and what to keep in mind; near the results, never behind a click. */

import { answer } from "../engine.ts";
import { t, type TextKey } from "../text.ts";

const cautions: TextKey[] = ["caution.scope", "caution.people", "caution.limits", "caution.leaves", "caution.trellis"];

export function Cautions() {
  const version = answer.value?.day.modelVersion;
  return (
    <section class="cautions" aria-labelledby="cautions">
      <h2 id="cautions">{t("cautions")}</h2>
      <ul>
        {cautions.map((key) => (
          <li key={key}>{t(key)}</li>
        ))}
      </ul>
      <p>
        {t("privacy")} {version && t("model", { version })}
      </p>
    </section>
  );
}
