/** The sheet in which scenarios are kept, opened and saved as files. */

import { useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { effectiveText } from "../document.ts";
import { download, fileName, fileText } from "../keep/files.ts";
import { earlierElsewhere, named, notKept, openFile, openKept, putBack, refresh, remove, removed, saveAs } from "../keep/keeping.ts";
import type { Named, Work } from "../keep/shelf.ts";
import { scenario } from "../store.ts";
import { t } from "../text.ts";
import { moment } from "../units.ts";
import { Button } from "./button.tsx";
import { Group } from "./group.tsx";
import { Sheet } from "./sheet.tsx";

export function KeepSheet() {
  useEffect(() => void refresh(), []);
  return (
    <Sheet level={2} title={t("keep")}>
      <Group title="keep.file">
        <div class="keep-row">
          <Button label={t("keep.saveFile")} onPress={saveFile} hook="save-file" />
          <OpenFile />
        </div>
        <p class="small">{t("keep.fileNote")}</p>
      </Group>
      {notKept.value !== "blocked" && (
        <>
          <Group title="keep.named">
            <SaveAs />
            <ul class="keep-list" data-testid="named">
              {named.value.map((entry) => (
                <Entry key={entry.name} entry={entry} onRemove={() => void remove(entry)} />
              ))}
            </ul>
            {removed.value && (
              <p class="keep-row small" role="status">
                {t("keep.removed", { name: removed.value.name })} <Button class="quiet" label={t("keep.putBack")} onPress={() => void putBack()} />
              </p>
            )}
          </Group>
          <Group title="keep.earlier">
            <p class="small">{t("keep.earlierNote")}</p>
            <ul class="keep-list" data-testid="earlier">
              {earlierElsewhere.value.map((work) => (
                <Entry key={work.id} entry={work} />
              ))}
            </ul>
          </Group>
        </>
      )}
    </Sheet>
  );
}

function saveFile(): void {
  download(fileName(scenario.value, ".json"), new Blob([fileText(scenario.value)], { type: "application/json" }));
}

export { saveFile };

function OpenFile() {
  return (
    <label class="button file">
      {t("keep.openFile")}
      <input
        class="visually-hidden"
        type="file"
        accept=".json,application/json"
        data-testid="open-file"
        onChange={(event) => {
          const [file] = event.currentTarget.files ?? [];
          if (file) void openFile(file);
          event.currentTarget.value = ""; // the same file can be chosen again once it is mended
        }}
      />
    </label>
  );
}

/** Keeps the scenario under the typed name, at first its own. */
function SaveAs() {
  const name = useSignal(effectiveText(scenario.value, ["name"]));
  const trimmed = name.value.trim();
  const replaces = named.value.some((entry) => entry.name === trimmed);
  return (
    <div class="keep-row">
      <input
        class="text"
        aria-label={t("keep.name")}
        maxLength={80}
        value={name.value}
        onInput={(event) => (name.value = event.currentTarget.value)}
        data-testid="save-name"
      />
      <Button label={t(replaces ? "keep.replace" : "keep.save")} disabled={!trimmed} onPress={() => void saveAs(trimmed)} hook="save-named" />
    </div>
  );
}

function Entry({ entry, onRemove }: { entry: Named | Work; onRemove?: () => void }) {
  const what = entry.name || t("keep.nameless");
  return (
    <li class="keep-row">
      <Button class="quiet keep-name" label={what} spoken={t("keep.open", { name: what })} onPress={() => openKept(entry.document, what)} />
      <span class="small">{moment(entry.changed)}</span>
      {onRemove && <Button class="quiet" label={t("option.remove")} spoken={t("keep.remove", { name: what })} onPress={onRemove} />}
    </li>
  );
}
