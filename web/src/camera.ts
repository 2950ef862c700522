/**
 * Where one looks from in a pane, told by the row: rows of all directions are seen alike from the same
 * look. The view makes the camera of it and says where one looks from at first.
 */

export interface Look {
  /** From straight in front of the row to the eye, clockwise seen from above [deg]. */
  turn_deg: number;
  /** Height of the eye above the target's horizon [deg]. */
  elevation_deg: number;
  distance_m: number;
  /** The vines between the eye and the target are taken away along the rows. */
  opened?: boolean;
}

/** The look at first of an option. */
export interface Home extends Look {
  /** Compass direction that the front of the rows faces, where the afternoon sun is [deg]. */
  front_deg: number;
}

const lowest_deg = 1;
const highest_deg = 88;
const nearest_m = 1.2;
const farthest_m = 40;

/** Any angle within 0–360°. */
function around(angle_deg: number): number {
  return ((angle_deg % 360) + 360) % 360;
}

/** Turns around the row and tilts; positive turn moves the eye clockwise. What was opened is closed by a turn. */
export function orbit(look: Look, turn_deg: number, tilt_deg: number): Look {
  const elevation = Math.min(highest_deg, Math.max(lowest_deg, look.elevation_deg + tilt_deg));
  return { turn_deg: around(look.turn_deg + turn_deg), elevation_deg: elevation, distance_m: look.distance_m, ...(look.opened && turn_deg === 0 ? { opened: true } : {}) };
}

/** Multiplies the distance: below 1 comes closer. */
export function zoom(look: Look, factor: number): Look {
  const distance = Math.min(farthest_m, Math.max(nearest_m, look.distance_m * factor));
  return { ...look, distance_m: distance };
}

/** The compass direction from which one looks [deg]. */
export function compassFrom(look: Look, home: Home): number {
  return around(home.front_deg + look.turn_deg);
}

/**
 * A look after its row has turned. Who has not chosen one keeps his place in front of the row, as all do
 * who look together; who has chosen one himself keeps his place in the vineyard.
 */
export function afterTurn(look: Look | null, before: Home | undefined, after: Home, together: boolean): Look | null {
  if (!look || !before || together) return look;
  return { ...look, turn_deg: around(look.turn_deg + before.front_deg - after.front_deg) };
}
