/** The choice among the ways of looking, one for all panes. */

import { optionCount } from "../store.ts";
import { t } from "../text.ts";
import { way, ways } from "../ways.ts";
import { viewState } from "../view.ts";

export function WayChoice() {
  const state = viewState.value;
  if (state.phase === "no-canvas") return null;
  return (
    <>
      <fieldset class="ways" data-testid="ways">
        <legend class="visually-hidden">{t("ways", { count: optionCount.value })}</legend>
        {ways.map((one) => (
          <label key={one} class="way">
            <input
              type="radio"
              name="way"
              value={one}
              checked={way.value === one}
              onChange={() => (way.value = one)}
              data-testid={`way-${one}`}
            />
            <span>{t(`way.${one}`)}</span>
          </label>
        ))}
      </fieldset>
      {state.phase === "running" && state.painted && (
        <p class="painted" data-testid="painted">
          {t("view.painted")}
        </p>
      )}
    </>
  );
}
