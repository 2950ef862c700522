/** The squares of an address that a phone reads (ISO/IEC 18004), loaded only when something is printed with one. */

import { encode } from "uqr";

/** The dark squares of a code with the quiet zone around it: its size, and an SVG path on a grid of that size. */
export interface Code {
  size: number;
  path: string;
}

/** A quarter of the code may be lost on paper and it is still read. */
export function codeOf(address: string): Code {
  const { size, data } = encode(address, { ecc: "Q", border: 4 });
  const squares = data.flatMap((row, y) => row.flatMap((dark, x) => (dark ? [`M${x} ${y}h1v1h-1z`] : [])));
  return { size, path: squares.join("") };
}
