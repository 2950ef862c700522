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

/** The readable part of inferno, as render cuts it. */
export const readable = { from: 0.2, to: 0.95 };

/** Where a temperature lies on the scale, 0–1. */
export function onScale(temperature_C: number): number {
  const { min_C, max_C } = temperatureScale;
  return Math.min(1, Math.max(0, (temperature_C - min_C) / (max_C - min_C)));
}

/** The colour of a temperature, each part 0–255. */
export function temperatureColour(temperature_C: number): [number, number, number] {
  const share = readable.from + (readable.to - readable.from) * onScale(temperature_C);
  const place = share * (infernoHex.length - 1);
  const i = Math.min(Math.floor(place), infernoHex.length - 2);
  const [low, high] = [infernoHex[i] as number, infernoHex[i + 1] as number];
  const part = (shift: number) => {
    const [a, b] = [(low >> shift) & 255, (high >> shift) & 255];
    return Math.round(a + (b - a) * (place - i));
  };
  return [part(16), part(8), part(0)];
}

/** The colours of a row of temperatures as one line of pixels. */
export function colourLine(temperatures_C: readonly number[]): ImageData {
  const image = new ImageData(temperatures_C.length, 1);
  temperatures_C.forEach((temperature, i) => image.data.set([...temperatureColour(temperature), 255], 4 * i));
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
