/** How far a sweep has come, with a way to stop it and to go on. */

import { faultText } from "../sentences.ts";
import { units } from "../store.ts";
import type { Sweep } from "../sweeps.ts";
import { t } from "../text.ts";
import { formatNumber } from "../units.ts";
import { Button } from "./button.tsx";

interface SweepProgressProps {
  sweep: Sweep;
  /** The mark of the words; its buttons have it with -stop and -run. */
  hook: string;
  run: () => void;
}

export function SweepProgress({ sweep, hook, run }: SweepProgressProps) {
  const state = sweep.state.value;
  const busy = state.phase === "planning" || state.phase === "running";
  const done = state.phase === "running" ? state.done : 0;
  return (
    <div class="sweep-state">
      <p class="note" data-testid={hook} data-done={String(state.phase === "done")}>
        {busy ? t("sweep.running", { percent: `${formatNumber(100 * done, 0)}\u00a0%` }) : state.phase === "done" ? t("computed") : state.phase === "stopped" ? t("sweep.stopped") : ""}
      </p>
      {busy && <progress max={1} value={done} aria-label={t("sweep.progress")} />}
      {busy && <Button label={t("sweep.stop")} onPress={() => sweep.end("stopped")} hook={`${hook}-stop`} />}
      {(state.phase === "stopped" || state.phase === "failed") && <Button label={t("sweep.run")} onPress={run} hook={`${hook}-run`} />}
      {state.phase === "failed" && (
        <p class="fault" role="alert">
          {t("sweep.failed", { reason: state.reason })}
        </p>
      )}
      {state.phase === "refused" && (
        <ul class="fault" role="alert">
          {state.faults.map((fault, i) => (
            <li key={i}>{faultText(fault, units.value)}</li>
          ))}
        </ul>
      )}
    </div>
  );
}
