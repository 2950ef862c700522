/** The sheet in which the scenario is handed on: as a link, within another page, as tables and pictures. */

import { useEffect } from "preact/hooks";
import { useSignal } from "@preact/signals";
import { answer } from "../engine.ts";
import { dayTable } from "../keep/day-table.ts";
import { download, fileName } from "../keep/files.ts";
import { link, linkLength, refreshLink } from "../keep/link.ts";
import { longestLink } from "../keep/packed.ts";
import { savePictures } from "../keep/pictures.tsx";
import { scenario } from "../store.ts";
import { t } from "../text.ts";
import { formatNumber } from "../units.ts";
import { Button } from "./button.tsx";
import { Group } from "./group.tsx";
import { saveFile } from "./keep-sheet.tsx";
import { Sheet } from "./sheet.tsx";

export function ShareSheet() {
  const day = answer.value?.day;
  const busy = useSignal(false);
  return (
    <Sheet level={2} title={t("share")}>
      <Group title="share.link">
        <Link />
      </Group>
      <Group title="share.out">
        <div class="keep-row">
          <Button
            label={t("share.table")}
            disabled={!day}
            onPress={() => day && download(fileName(scenario.value, ".csv"), new Blob([dayTable(day)], { type: "text/csv;charset=utf-8" }))}
            hook="save-table"
          />
          <Button
            label={t("share.numbers")}
            disabled={!day}
            onPress={() => day && download(fileName(scenario.value, "-numbers.json"), new Blob([`${JSON.stringify(day)}\n`], { type: "application/json" }))}
            hook="save-numbers"
          />
          <Button
            label={t("share.pictures")}
            disabled={!day || busy.value}
            onPress={() => {
              busy.value = true;
              void savePictures().finally(() => (busy.value = false));
            }}
            hook="save-pictures"
          />
        </div>
        <p class="small">{t("share.outNote")}</p>
      </Group>
    </Sheet>
  );
}

/** The link, to copy by button or by hand; one that is too long gives way to the file. */
function Link() {
  const copied = useSignal<"copied" | "byHand" | null>(null);
  const document = scenario.value;
  useEffect(() => {
    copied.value = null;
    void refreshLink();
  }, [document]);
  if (linkLength.value > longestLink) {
    return (
      <>
        <p>{t("share.tooLong", { length: formatNumber(linkLength.value, 0) })}</p>
        <Button label={t("keep.saveFile")} onPress={saveFile} />
      </>
    );
  }
  const copy = (text: string, field: string) => async () => {
    try {
      await navigator.clipboard.writeText(text);
      copied.value = "copied";
    } catch {
      globalThis.document.querySelector<HTMLInputElement>(`[data-testid=${field}]`)?.select();
      copied.value = "byHand";
    }
  };
  return (
    <>
      <Text label={t("share.address")} value={link.value} hook="link" onCopy={copy(link.value, "link")} />
      <Text label={t("share.embed")} value={frameText(link.value)} hook="embed-text" onCopy={copy(frameText(link.value), "embed-text")} />
      <p class="small" role="status">
        {copied.value ? t(`share.${copied.value}`) : t("share.linkNote")}
      </p>
    </>
  );
}

/** What a teacher puts into a page: the same link, to be looked at only. */
function frameText(address: string): string {
  return `<iframe src="${address.replace("#", "?embed#")}" title="Rowlight" width="100%" height="720" style="border:0"></iframe>`;
}

function Text({ label, value, hook, onCopy }: { label: string; value: string; hook: string; onCopy: () => void }) {
  return (
    <div class="keep-row">
      <label class="keep-label">
        <span class="field-label">{label}</span>
        <input class="text" readOnly value={value} data-testid={hook} onFocus={(event) => event.currentTarget.select()} />
      </label>
      <Button label={t("share.copy")} spoken={t("share.copyWhat", { what: label })} onPress={onCopy} />
    </div>
  );
}
