/**
 * A pane: the focusable element over the view's frame that takes pointer, touch and keys and sends
 * the look, its buttons, and the compass.
 */

import { type Signal, useSignal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import { type Look, orbit, zoom } from "../camera.ts";
import { letter } from "../document.ts";
import { optionHook } from "../hooks.ts";
import { linkLooks, looksLinked, moveLook } from "../looks.ts";
import { optionCount } from "../store.ts";
import { loadingText } from "../loading.ts";
import { t, type TextKey } from "../text.ts";
import { lookFrom, readBunch, restartView, tapPane, viewState } from "../view.ts";
import { fixedLooks, way, type Way } from "../ways.ts";
import { Button } from "./button.tsx";
import { Compass } from "./compass.tsx";
import { BunchIcon, CloserIcon, DownIcon, EyeIcon, FartherIcon, LinkIcon, ResetIcon, TurnLeftIcon, TurnRightIcon, UpIcon } from "./icons.tsx";
import { PaneLabels } from "./pane-labels.tsx";

const turnPerPixel_deg = 0.35;
const tiltPerPixel_deg = 0.25;
const turnPerPress_deg = 10;
const tiltPerPress_deg = 5;
const closer = 1 / 1.15;
/** A pointer that moves less than this taps. */
const tapReach_px = 4;

type Move = (look: Look) => Look | null;

const moves: { label: TextKey; keys: string[]; sign: () => preact.JSX.Element; move: Move }[] = [
  { label: "pane.turnLeft", keys: ["ArrowLeft"], sign: TurnLeftIcon, move: (c) => orbit(c, turnPerPress_deg, 0) },
  { label: "pane.turnRight", keys: ["ArrowRight"], sign: TurnRightIcon, move: (c) => orbit(c, -turnPerPress_deg, 0) },
  { label: "pane.up", keys: ["ArrowUp"], sign: UpIcon, move: (c) => orbit(c, 0, tiltPerPress_deg) },
  { label: "pane.down", keys: ["ArrowDown"], sign: DownIcon, move: (c) => orbit(c, 0, -tiltPerPress_deg) },
  { label: "pane.closer", keys: ["+", "="], sign: CloserIcon, move: (c) => zoom(c, closer) },
  { label: "pane.farther", keys: ["-", "_"], sign: FartherIcon, move: (c) => zoom(c, 1 / closer) },
  { label: "pane.reset", keys: ["Home"], sign: ResetIcon, move: () => null },
];

/** Ways in which one turns around the rows; the others stand still. */
const turns = (now: Way) => now !== "slice" && now !== "outlook";

/** The moves that change something in a way: a slice only comes closer. */
function movesIn(now: Way): typeof moves {
  if (turns(now)) return moves;
  return now === "slice" ? moves.slice(-3) : [];
}

export function PaneView({ option }: { option: number }) {
  const surface = useRef<HTMLDivElement>(null);
  const unfolded = useSignal(false);
  useEffect(() => (surface.current ? takePointers(surface.current, option) : undefined), [option]);
  const running = viewState.value.phase === "running";
  return (
    <div class={`pane ${running ? "" : "without-picture"}`} data-pane={option}>
      <div
        ref={surface}
        class="pane-surface"
        tabIndex={running ? 0 : -1}
        role="application"
        aria-label={t("pane", { letter: letter(option) })}
        data-testid={optionHook(option, "pane")}
        onPointerDown={() => (unfolded.value = false)}
        onKeyDown={(event) => {
          if (event.ctrlKey || event.metaKey || event.altKey) return;
          const found = moves.find((m) => m.keys.includes(event.key));
          const place = fixedLooks[Number(event.key) - 1];
          if (found) moveLook(option, found.move);
          else if (place) lookFrom(option, place);
          else if (event.key.toLowerCase() === "b") readBunch(option);
          else return;
          event.preventDefault();
        }}
      />
      <PaneNotice option={option} />
      {running && <PaneLabels option={option} />}
      {turns(way.value) && <Compass option={option} />}
      {running && <PaneTools option={option} unfolded={unfolded} />}
    </div>
  );
}

/** What moves the camera, in one row; where the pane is narrow, behind a button. */
function PaneTools({ option, unfolded }: { option: number; unfolded: Signal<boolean> }) {
  const tools = useRef<HTMLDivElement>(null);
  const name = t("pane.tools", { letter: letter(option) });
  const fold = () => {
    unfolded.value = false;
    tools.current?.querySelector("button")?.focus();
  };
  return (
    <div ref={tools} class={`pane-tools ${unfolded.value ? "unfolded" : ""}`} onKeyDown={(event) => unfolded.value && event.key === "Escape" && fold()}>
      <Button label={name} class="fold" expanded={unfolded.value} onPress={() => (unfolded.value = !unfolded.peek())} hook={optionHook(option, "tools")}>
        <EyeIcon />
      </Button>
      <div class="pane-moves" role="group" aria-label={name}>
        {movesIn(way.value).map(({ label, sign: Sign, move }) => (
          <Button key={label} label={t(label)} onPress={() => moveLook(option, move)} {...(label === "pane.closer" ? { hook: optionHook(option, "closer") } : {})}>
            <Sign />
          </Button>
        ))}
        <Button label={t("pane.bunch")} onPress={() => readBunch(option)} hook={optionHook(option, "read")}>
          <BunchIcon />
        </Button>
        {turns(way.value) && <PlaceChoice option={option} />}
        {optionCount.value > 1 && way.value !== "outlook" && (
          <Button label={t("pane.link")} pressed={looksLinked.value} onPress={() => linkLooks(!looksLinked.peek(), option)} hook={optionHook(option, "link")}>
            <LinkIcon />
          </Button>
        )}
      </div>
    </div>
  );
}

/** The places to look from; each choice goes there, also the one that was made last. */
function PlaceChoice({ option }: { option: number }) {
  return (
    <select
      class="select place-choice"
      aria-label={t("pane.from")}
      value=""
      data-testid={optionHook(option, "from")}
      onChange={(event) => {
        const chosen = fixedLooks.find((one) => one === event.currentTarget.value);
        event.currentTarget.value = "";
        if (chosen) lookFrom(option, chosen);
      }}
    >
      <option value="" disabled hidden>
        {t("pane.from")}
      </option>
      {fixedLooks.map((one) => (
        <option key={one} value={one}>
          {t(`from.${one}`)}
        </option>
      ))}
    </select>
  );
}

function PaneNotice({ option }: { option: number }) {
  const state = viewState.value;
  if (state.phase === "running") return null;
  if (state.phase === "no-canvas") return <p class="pane-notice">{t("view.noCanvas")}</p>;
  if (state.phase === "crashed") {
    return (
      <p class="pane-notice">
        {t("view.crashed")} {option === 0 && <Button label={t("restart")} onPress={restartView} hook="restart-view" />}
      </p>
    );
  }
  const arrived = state.progress.total > 0 && state.progress.loaded >= state.progress.total;
  return <p class="pane-notice">{arrived ? t("pane.waiting") : loadingText("loading.view", state.progress)}</p>;
}

/** One pointer turns and tilts, two come closer; the wheel does so with Ctrl, else the page scrolls. A tap reads the
 * bunch under it. */
function takePointers(element: HTMLElement, option: number): () => void {
  const pointers = new Map<number, { x: number; y: number }>();
  const spread = () => {
    const [a, b] = [...pointers.values()];
    return a && b ? Math.hypot(a.x - b.x, a.y - b.y) : 0;
  };
  // Where a pointer went down alone, as long as it has not moved away.
  let still: { x: number; y: number } | null = null;
  const down = (event: PointerEvent) => {
    if (event.button !== 0) return;
    element.setPointerCapture(event.pointerId);
    still = pointers.size === 0 ? { x: event.clientX, y: event.clientY } : null;
    pointers.set(event.pointerId, { x: event.clientX, y: event.clientY });
  };
  const move = (event: PointerEvent) => {
    const last = pointers.get(event.pointerId);
    if (!last) return;
    if (still) {
      if (Math.hypot(event.clientX - still.x, event.clientY - still.y) < tapReach_px) return;
      still = null;
    }
    const before = spread();
    pointers.set(event.pointerId, { x: event.clientX, y: event.clientY });
    const after = spread();
    if (pointers.size === 1) {
      const [dx, dy] = [event.clientX - last.x, event.clientY - last.y];
      moveLook(option, (c) => orbit(c, dx * turnPerPixel_deg, dy * tiltPerPixel_deg));
    } else if (before > 0 && after > 0) {
      moveLook(option, (c) => zoom(c, before / after));
    }
  };
  const up = (event: PointerEvent) => {
    pointers.delete(event.pointerId);
    const box = (element.parentElement ?? element).getBoundingClientRect();
    if (still && event.type === "pointerup") tapPane(option, still.x - box.x, still.y - box.y);
    still = null;
  };
  const wheel = (event: WheelEvent) => {
    if (!event.ctrlKey) return;
    event.preventDefault();
    moveLook(option, (c) => zoom(c, Math.exp(event.deltaY * 0.002)));
  };
  const stop = new AbortController();
  const { signal } = stop;
  element.addEventListener("pointerdown", down, { signal });
  element.addEventListener("pointermove", move, { signal });
  element.addEventListener("pointerup", up, { signal });
  element.addEventListener("pointercancel", up, { signal });
  element.addEventListener("wheel", wheel, { signal, passive: false });
  return () => stop.abort();
}
