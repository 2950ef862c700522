/** The camera of a pane: it looks at the middle of the middle row from a compass direction. */

export interface Camera {
  /** Direction from which one looks, clockwise from true north [deg]. */
  azimuth_deg: number;
  /** Height of the eye above the target's horizon [deg]. */
  elevation_deg: number;
  distance_m: number;
  targetZ_m: number;
}

/** From the west-south-west at eye height: onto the afternoon side of north–south rows and along them. */
export const defaultCamera: Camera = { azimuth_deg: 240, elevation_deg: 9, distance_m: 4.4, targetZ_m: 1.1 };

const lowest_deg = 1;
const highest_deg = 88;
const nearest_m = 2;
const farthest_m = 40;

/** Turns around the row and tilts; positive turn moves the eye clockwise. */
export function orbit(camera: Camera, turn_deg: number, tilt_deg: number): Camera {
  const azimuth = (((camera.azimuth_deg + turn_deg) % 360) + 360) % 360;
  const elevation = Math.min(highest_deg, Math.max(lowest_deg, camera.elevation_deg + tilt_deg));
  return { ...camera, azimuth_deg: azimuth, elevation_deg: elevation };
}

/** Multiplies the distance: below 1 comes closer. */
export function zoom(camera: Camera, factor: number): Camera {
  const distance = Math.min(farthest_m, Math.max(nearest_m, camera.distance_m * factor));
  return { ...camera, distance_m: distance };
}

/** Where a compass direction lies on the screen, clockwise from straight up [deg]. */
export function onScreen(camera: Camera, azimuth_deg: number): number {
  return (((azimuth_deg - camera.azimuth_deg - 180) % 360) + 360) % 360;
}
