/** How a number of the day comes about: what it is, its range and what it follows, what is drawn, and the chain of one bunch. */

import { signal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { letter } from "../document.ts";
import { answer, listenToEngine, ranges, tellEngine } from "../engine.ts";
import type { Input } from "../generated/result.ts";
import type { Chain, Link } from "../messages.ts";
import { optionResult, worse, worseBand } from "../shown.ts";
import { explained, units } from "../store.ts";
import { t, tOr } from "../text.ts";
import { clock, show, showDifference, showPlain, span, text } from "../units.ts";
import { dayRows } from "./numbers.tsx";
import { Sheet } from "./sheet.tsx";

/** The newest chain from the engine, with the result that it belongs to. */
const chain = signal<{ generation: number; chain: Chain } | null>(null);
listenToEngine((message) => {
  if (message.kind === "explanation") chain.value = { generation: message.generation, chain: JSON.parse(message.chain) as Chain };
});

/** Nothing is explained that no row shows: then nothing is drawn. */
export function Explanation({ option, number }: { option: number; number: string }) {
  const row = dayRows().find((candidate) => candidate.number === number);
  const generation = answer.value?.generation;
  const own = row && worse(optionResult(option), row.number);
  useEffect(() => {
    if (generation === undefined || !own) return;
    chain.value = null;
    tellEngine({ kind: "explain", generation, option, side: own.at, hour: own.side.summary.hottestAt_h });
  }, [generation, option, number]);
  if (!row || !own) return null;
  const band = worseBand(option, row.number);
  const shown = chain.value?.generation === generation ? chain.value?.chain : undefined;
  const value = text(show(own.value, row.unit, units.value));
  return (
    <Sheet level={3} title={t("explain.title", { letter: letter(option), label: row.label })} close={() => (explained.value = null)}>
      <div class="explanation" data-testid="explanation">
        <p>
          <strong>{own.value > 0 ? t("explain.value", { value, side: own.side.compass }) : value}</strong>
          {". "}
          {t(row.unit === "h" ? "explain.over" : "explain.hottest")}
        </p>
        {band ? (
          <p>
            {t("explain.range", { span: span(band.low, band.high, row.unit, units.value), draws: ranges.value?.draws ?? 0 })}{" "}
            {t("explain.error", { error: text(showDifference(band.error, row.unit === "h" ? "h" : "K", units.value)).replace("+", "") })}{" "}
            {band.most && t("explain.most", { input: tOr(`input.${band.most}`, band.most) })}
          </p>
        ) : (
          <p>{t("odds.pending")}</p>
        )}
        <Inputs most={band?.most} />
        <h4>{t("explain.chain")}</h4>
        {shown ? <ChainParts chain={shown} /> : <p>{t("explain.waiting")}</p>}
      </div>
    </Sheet>
  );
}

/** The inputs that are drawn, the one that matters most first. */
function Inputs({ most }: { most: string | undefined }) {
  const inputs: Input[] = ranges.value?.inputs ?? [];
  if (!inputs.length) return null;
  const first = [...inputs].sort((a, b) => Number(b.key === most) - Number(a.key === most));
  const plain = (value: number) => showPlain(value, "", units.value).value;
  return (
    <details>
      <summary>{t("explain.inputs")}</summary>
      <dl class="links">
        {first.map((input) => (
          <div key={input.key}>
            <dt>{tOr(`input.${input.key}`, input.name)}</dt>
            <dd>{t("explain.input", { low: plain(input.low), usual: plain(input.usual), high: plain(input.high), unit: input.unit === "1" ? "" : input.unit })}</dd>
            <dd class="note">{input.source}</dd>
          </div>
        ))}
      </dl>
    </details>
  );
}

/** The chain by its parts, closed; each says what it ends in. */
function ChainParts({ chain: { bunch, bunches, hour_h, links } }: { chain: Chain }) {
  const parts = [...new Set(links.map((link) => link.part))];
  return (
    <>
      <p class="small">{t("explain.bunch", { hour: clock(hour_h), bunch, bunches })}</p>
      {parts.map((part) => {
        const own = links.filter((link) => link.part === part);
        const last = own.at(-1);
        return (
          <details key={part} class="chain-part">
            <summary>{part}</summary>
            <dl class="links">
              {own.map((link) => (
                <ChainLink key={link.symbol} link={link} last={link === last} />
              ))}
            </dl>
          </details>
        );
      })}
    </>
  );
}

function ChainLink({ link: { symbol, meaning, value, unit, relation, source }, last }: { link: Link; last: boolean }) {
  return (
    <div class={last ? "last" : ""}>
      <dt>{meaning}</dt>
      <dd>
        <code>{symbol}</code> = {text({ value: showPlain(value, "", units.value).value, unit })}
      </dd>
      {relation && (
        <dd>
          <code>{relation}</code>
        </dd>
      )}
      {source && <dd class="note">{source}</dd>}
    </div>
  );
}
