/** The tools of the head that keep, hand on and print, and their sheets. */

import { useSignal } from "@preact/signals";
import { answer } from "../engine.ts";
import { sheet } from "../store.ts";
import { t } from "../text.ts";
import { Button } from "./button.tsx";
import { KeepSheet } from "./keep-sheet.tsx";
import { printReport } from "./report.tsx";
import { ShareSheet } from "./share-sheet.tsx";

export function KeepTools() {
  const printing = useSignal(false);
  const open = (which: "keep" | "share") => (sheet.value = sheet.value === which ? null : which);
  return (
    <div class="keep-tools" role="group" aria-label={t("keep.tools")}>
      <Button label={t("keep.button")} expanded={sheet.value === "keep"} onPress={() => open("keep")} hook="keep" />
      <Button label={t("share")} expanded={sheet.value === "share"} onPress={() => open("share")} hook="share" />
      <Button
        label={t("report")}
        disabled={!answer.value || printing.value}
        onPress={() => {
          printing.value = true;
          void printReport().finally(() => (printing.value = false));
        }}
        hook="report"
      />
    </div>
  );
}

export function KeepSheets() {
  return (
    <>
      {sheet.value === "keep" && <KeepSheet />}
      {sheet.value === "share" && <ShareSheet />}
    </>
  );
}
