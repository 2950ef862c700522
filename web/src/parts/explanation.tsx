/** How a number of the day comes about: what it is, its range and what it follows, what is drawn, and the chain of one bunch. */

import { signal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { letter } from "../document.ts";
import { answer, listenToEngine, ranges, tellEngine } from "../engine.ts";
import type { Input } from "../generated/result.ts";
import type { Chain, Link } from "../messages.ts";
import { roundScale } from "../scales.ts";
import { optionResult, sideName, worse, worseBand } from "../shown.ts";
import { explained, instant, step_min, units } from "../store.ts";
import { t } from "../text.ts";
import { clock, formatNumber, show, showDifference, showPlain, span, text } from "../units.ts";
import { sharedText } from "../sentences.ts";
import { sharedWord } from "../words.ts";
import { dayRows } from "./numbers.tsx";
import { Whisker } from "./range.tsx";
import { Sheet } from "./sheet.tsx";
import { denseLayers, lowSun_deg, stillAir_ms } from "./sureness.tsx";

/** The newest chain from the engine, with the result that it belongs to. */
const chain = signal<{ generation: number; chain: Chain } | null>(null);
listenToEngine((message) => {
  if (message.kind === "explanation") chain.value = { generation: message.generation, chain: JSON.parse(message.chain) as Chain };
});

/** While the hour is dragged nothing is asked. */
const askAfter_ms = 150;
/** Hours closer than this are the same instant. */
const sameHour_h = step_min / 120;

/** The chain of the hottest bunch face of a side of an option at an hour; it is asked for whenever that changes. */
function useChain(option: number, at: number | undefined, hour_h: number): Chain | undefined {
  const generation = answer.value?.generation;
  const side = at === undefined ? undefined : optionResult(option)?.sides[at];
  useEffect(() => {
    if (generation === undefined || at === undefined) return undefined;
    const timer = setTimeout(() => tellEngine({ kind: "explain", generation, option, side: at, hour: hour_h }), askAfter_ms);
    return () => clearTimeout(timer);
  }, [generation, option, at, hour_h]);
  const newest = chain.value;
  if (!newest || !side || newest.generation !== generation) return undefined;
  const { chain: found } = newest;
  return found.option === letter(option) && found.side === side.compass && Math.abs(found.hour_h - hour_h) <= sameHour_h ? found : undefined;
}

/** Nothing is explained that no row shows: then nothing is drawn. */
export function Explanation({ option, number }: { option: number; number: string }) {
  const place = hourPlaces[number];
  return place ? <HourExplanation option={option} place={place} /> : <DayExplanation option={option} number={number} />;
}

/** By which number the sides at the chosen hour are explained. */
const hourPlaces: Record<string, "left" | "right"> = { "now-left": "left", "now-right": "right" };

/** A side at the chosen hour. */
function HourExplanation({ option, place }: { option: number; place: "left" | "right" }) {
  const result = optionResult(option);
  const i = instant.value;
  const hour_h = (i * step_min) / 60;
  const at = place === "left" ? 0 : 1;
  const shown = useChain(option, result ? at : undefined, hour_h);
  const side = result?.sides[at];
  if (!side) return null;
  const degrees = (value: number | undefined) => text(show(value ?? Number.NaN, "degC", units.value));
  const words = {
    hour: clock(hour_h),
    lit: text(show(side.steps.litShare[i] ?? Number.NaN, "share", units.value)),
    mean: degrees(side.steps.mean_C[i]),
    hottest: degrees(side.steps.hottest_C[i]),
  };
  return (
    <Sheet level={3} title={t("explain.now.title", { letter: letter(option), side: sideName(side), hour: clock(hour_h) })} close={() => (explained.value = null)}>
      <div class="explanation" data-testid="explanation">
        <p>{t("explain.now", words)}</p>
        <Bounds />
        <Inputs most={undefined} />
        <ChainHead shown={shown} />
      </div>
    </Sheet>
  );
}

function DayExplanation({ option, number }: { option: number; number: string }) {
  const row = dayRows().find((candidate) => candidate.number === number);
  const own = row && worse(optionResult(option), row.number);
  const shown = useChain(option, own?.at, own?.side.summary.hottestAt_h ?? 0);
  if (!row || !own) return null;
  const band = worseBand(option, row.number);
  const value = text(show(own.value, row.unit, units.value));
  return (
    <Sheet level={3} title={t("explain.title", { letter: letter(option), label: row.full })} close={() => (explained.value = null)}>
      <div class="explanation" data-testid="explanation">
        <p>
          <strong>{own.value > 0 ? t("explain.value", { value, side: sharedWord(own.side.compass) }) : value}</strong>
          {". "}
          {t(row.unit === "h" ? "explain.over" : "explain.hottest")}
        </p>
        {band ? (
          <p>
            {t("explain.range", { span: span(band.low, band.high, row.unit, units.value), draws: ranges.value?.draws ?? 0 })}{" "}
            {t("explain.error", { error: text(showDifference(band.error, row.unit === "h" ? "h" : "K", units.value)).replace("+", "") })}{" "}
            {band.most && t("explain.most", { input: sharedText(`input.${band.most}`) })}
          </p>
        ) : (
          <p>{t("odds.pending")}</p>
        )}
        <Bounds />
        <Inputs most={band?.most} />
        <ChainHead shown={shown} />
      </div>
    </Sheet>
  );
}

/** Within which bounds all numbers hold, and which of them are surest. */
function Bounds() {
  const words = { wind: text(show(stillAir_ms, "m/s", units.value)), elevation: `${formatNumber(lowSun_deg, 0)}°`, layers: formatNumber(denseLayers, 0) };
  return (
    <>
      <p>{t("explain.differences")}</p>
      <p>{t("explain.holds", words)}</p>
    </>
  );
}

function ChainHead({ shown }: { shown: Chain | undefined }) {
  return (
    <>
      <h4>{t("explain.chain")}</h4>
      {shown ? <ChainParts chain={shown} /> : <p>{t("explain.waiting")}</p>}
    </>
  );
}

/** The inputs that are drawn, the one that matters most first. */
function Inputs({ most }: { most: string | undefined }) {
  const inputs: Input[] = ranges.value?.inputs ?? [];
  if (!inputs.length) return null;
  const first = [...inputs].sort((a, b) => Number(b.key === most) - Number(a.key === most));
  // Factors on what the scenario says share a scale, so that the widest shows.
  const factors = roundScale([0, ...inputs.filter(({ usual }) => usual === 1).map(({ high }) => high)], 0.1);
  const plain = (value: number) => showPlain(value, "", units.value).value;
  return (
    <details>
      <summary>{t("explain.inputs")}</summary>
      <dl class="links">
        {first.map((input) => (
          <div key={input.key}>
            <dt>{sharedText(`input.${input.key}`)}</dt>
            <dd>
              <Whisker low={input.low} high={input.high} value={input.usual} unit={input.usual === 1 ? "×" : input.unit === "1" ? "" : input.unit} scale={input.usual === 1 ? factors : roundScale([input.low, input.high], 0.01)} />
            </dd>
            <dd>{t("explain.input", { low: plain(input.low), usual: plain(input.usual), high: plain(input.high), unit: input.unit === "1" ? "" : input.unit })}</dd>
            <dd class="note">{sharedText(`input.${input.key}.source`)}</dd>
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
            <summary>{sharedText(`chain.part.${part}`)}</summary>
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

/** What a symbol stands for. Nets are counted in their symbols: all of them mean the same. */
function meaningOf(symbol: string): string {
  return sharedText(`chain.${symbol.replace(/^net\d+/, "net")}`);
}

function ChainLink({ link: { symbol, value, unit, relation, source }, last }: { link: Link; last: boolean }) {
  return (
    <div class={last ? "last" : ""}>
      <dt>{meaningOf(symbol)}</dt>
      <dd>
        <code>{symbol}</code> = {text({ value: showPlain(value, "", units.value).value, unit })}
      </dd>
      {relation && (
        <dd>
          <code>{relation}</code>
        </dd>
      )}
      {source && <dd class="note">{sharedText(`source.${source}`)}</dd>}
    </div>
  );
}
