/**
 * The temperature scale, the same in every pane, strip and legend. The colours are those of the
 * pictures (render.TemperaturePalette): "inferno" by S. van der Walt and N. Smith 2015 (CC0), cut to
 * its readable part.
 */

/** Ends of the scale [°C]; what lies beyond takes the colour of the end. */
export const temperatureScale = { min_C: 15, max_C: 55 };

/** Every 15th of the 256 colours of inferno, as render has them. */
export const infernoHex = [
  0x000004, 0x0a0722, 0x1e0c45, 0x380962, 0x510e6c, 0x69166e, 0x801f6c, 0x982766, 0xb0315b,
  0xc63d4d, 0xd94d3d, 0xe9612b, 0xf47918, 0xfa9407, 0xfcb014, 0xf8cd37, 0xf2ea69, 0xfcffa4,
] as const;

/** Upper end of the scale of sunlight [W/m²], as in render; the lower is 0. */
export const brightest_Wm2 = 1000;

/** Every 15th of the 256 colours of "viridis" by the same authors (CC0), as render has them. */
export const viridisHex = [
  0x440154, 0x481769, 0x472a7a, 0x433d84, 0x3d4e8a, 0x355e8d, 0x2e6d8e, 0x297b8e, 0x23898e,
  0x1f978b, 0x21a585, 0x2eb37c, 0x46c06f, 0x65cb5e, 0x89d548, 0xb0dd2f, 0xd8e219, 0xfde725,
] as const;

/** The readable part of inferno, as render cuts it. */
export const readable = { from: 0.2, to: 0.95 };

/** Where a temperature lies on the scale, 0–1. */
export function onScale(temperature_C: number): number {
  const { min_C, max_C } = temperatureScale;
  return Math.min(1, Math.max(0, (temperature_C - min_C) / (max_C - min_C)));
}

/** The colour of a temperature, each part 0–255. */
export function temperatureColour(temperature_C: number): [number, number, number] {
  return between(infernoHex, readable.from + (readable.to - readable.from) * onScale(temperature_C));
}

/** The colour of sunlight, each part 0–255. */
export function lightColour(light_Wm2: number): [number, number, number] {
  return between(viridisHex, Math.min(1, Math.max(0, light_Wm2 / brightest_Wm2)));
}

/** The colour at a share of a scale, 0–1. */
function between(scale: readonly number[], share: number): [number, number, number] {
  const place = share * (scale.length - 1);
  const i = Math.min(Math.floor(place), scale.length - 2);
  const [low, high] = [scale[i] as number, scale[i + 1] as number];
  const part = (shift: number) => {
    const [a, b] = [(low >> shift) & 255, (high >> shift) & 255];
    return Math.round(a + (b - a) * (place - i));
  };
  return [part(16), part(8), part(0)];
}

/** The colours of a row of temperatures, or of other values by their colour, as one line of pixels. */
export function colourLine(values: readonly number[], colour: (value: number) => [number, number, number] = temperatureColour): ImageData {
  const image = new ImageData(values.length, 1);
  values.forEach((value, i) => image.data.set([...colour(value), 255], 4 * i));
  return image;
}

/** A limit of the scenario, in the order watch, hot, burn. */
export interface Limit {
  key: "watch" | "hot" | "burn";
  temperature_C: number;
}

/** A stretch of the day, in clock hours. */
export interface Spell {
  from: number;
  to: number;
}

/** When a course lies over a limit; crossings are interpolated between instants. */
export function spellsOver(hour: readonly number[], course: readonly number[], limit: number): Spell[] {
  const spells: Spell[] = [];
  let from: number | null = null;
  for (let i = 0; i < course.length; i++) {
    const [h, value] = [hour[i] as number, course[i] as number];
    const crossing = () => {
      if (i === 0) return h;
      const [before, last] = [hour[i - 1] as number, course[i - 1] as number];
      return before + ((limit - last) / (value - last)) * (h - before);
    };
    if (value > limit && from === null) from = crossing();
    if (value <= limit && from !== null) {
      spells.push({ from, to: crossing() });
      from = null;
    }
  }
  if (from !== null) spells.push({ from, to: hour.at(-1) ?? from });
  return spells;
}

/** A scale whose ends and ticks are round numbers. */
export interface RoundScale {
  from: number;
  to: number;
  step: number;
}

/** No scale has more steps than this. */
const mostSteps = 6;

/** The finest scale of few steps that holds some values; its steps are not finer than a power of ten. */
export function roundScale(values: readonly number[], finest = 1): RoundScale {
  const [least, most] = [Math.min(...values), Math.max(...values)];
  for (let size = finest; ; size *= 10) {
    for (const step of [size, 2 * size, 5 * size]) {
      const [first, last] = [Math.floor(least / step), Math.ceil(most / step)];
      if (!(last - first > mostSteps)) return { from: first * step, to: Math.max(last, first + 1) * step, step };
    }
  }
}
