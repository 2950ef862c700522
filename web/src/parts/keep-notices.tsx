/** What there is to tell about documents that came in, about what is not kept, and about a newer Rowlight. */

import { answer } from "../engine.ts";
import { type Notice, linkModel, notices, notKept, notSaved, otherTabs } from "../keep/keeping.ts";
import { update, useUpdate } from "../keep/offline.ts";
import { fieldName } from "../labels.ts";
import { t } from "../text.ts";
import { Button } from "./button.tsx";
import { saveFile } from "./keep-sheet.tsx";

export function KeepNotices() {
  const model = answer.value?.day.modelVersion;
  const all = notices.value.map(noticeText);
  if (linkModel.value && model && linkModel.value !== model) all.push(t("notice.linkModel", { made: linkModel.value, now: model }));
  return (
    <>
      {all.length > 0 && (
        <div class="notice" role="status" data-testid="keep-notices">
          {all.map((text) => (
            <p key={text}>{text}</p>
          ))}
          <Button
            label={t("notice.close")}
            onPress={() => {
              notices.value = [];
              linkModel.value = null;
            }}
          />
        </div>
      )}
      {(notKept.value ?? notSaved.value) && (
        <div class="notice faults" role="alert" data-testid="not-kept">
          {notKept.value && <p>{t(`notKept.${notKept.value}`)}</p>}
          {notSaved.value && <p>{t(`notSaved.${notSaved.value}`)}</p>}
          <Button label={t("keep.saveFile")} onPress={saveFile} />
        </div>
      )}
      {otherTabs.value && <p class="small tabs-note" data-testid="other-tabs">{t("notice.tabs")}</p>}
      {update.value && (
        <div class="notice" role="status" data-testid="update">
          <p>{t("update.ready")}</p>
          <Button label={t("update.use")} onPress={useUpdate} hook="use-update" />
        </div>
      )}
    </>
  );
}

function noticeText(notice: Notice): string {
  switch (notice.kind) {
    case "migrated":
      return t("notice.migrated", { name: notice.name });
    case "dropped":
      return t("notice.dropped", { name: notice.name, fields: notice.fields.map(fieldName).join(", ") });
    case "unknown":
      return t("notice.unknown", { name: notice.name, fields: notice.fields.join(", ") });
    case "refused":
      return t(`refused.${notice.why}`, { name: notice.name });
    case "link":
      return t(notice.why === "newer" ? "link.newer" : "link.broken");
  }
}
