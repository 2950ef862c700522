/** What the simulation found wrong with the document, beside the field and once above the results. */

import { type Path, pointer } from "../document.ts";
import { faults } from "../engine.ts";
import type { Fault } from "../messages.ts";
import { faultText } from "../sentences.ts";
import { units } from "../store.ts";
import { t } from "../text.ts";

function faultsAt(path: Path): Fault[] {
  const place = pointer(path);
  return faults.value.filter((fault) => fault.path === place);
}

export function hasFault(path: Path): boolean {
  return faultsAt(path).length > 0;
}

export function FaultLines({ path, id }: { path: Path; id: string }) {
  const here = faultsAt(path);
  if (here.length === 0) return null;
  return (
    <ul class="fault" id={id}>
      {here.map((fault) => (
        <li key={fault.code}>{faultText(fault, units.value)}</li>
      ))}
    </ul>
  );
}

/** All faults at once, announced; the result before stays below. */
export function FaultSummary() {
  if (faults.value.length === 0) return null;
  return (
    <div class="notice faults" role="alert" data-testid="faults">
      <ul>
        {faults.value.map((fault) => (
          <li key={fault.path + fault.code}>{faultText(fault, units.value)}</li>
        ))}
      </ul>
      <p>{t("stale")}</p>
    </div>
  );
}
