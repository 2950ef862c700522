/** A season by day and hour, as far as it is known. */

/** One side on one day. */
export interface SideDay {
  overHot_h: number;
  overBurn_h: number;
  heat_K_h: number;
  atRisk: number;
  hottest_C: number;
  hottestAt_h: number;
  /** Highest of the hottest tenth of faces in each hour of the clock. */
  hourly_C: number[];
}

/** One side over the days. */
export interface SeasonSide {
  compass: string;
  sunSide: string;
  overHot_h: number;
  heat_K_h: number;
  atRisk: number;
  /** Days with most heat, by their index. */
  worst: number[];
}

export interface HeatWave {
  from: string;
  to: string;
  days: number;
  airMax_C: number;
}

/** All that is known of a season so far. */
export interface Season {
  days: { date: string; stage: string }[];
  /** By option and side, the left one first; days that are not known yet are absent. */
  calendar: [(SideDay | undefined)[], (SideDay | undefined)[]][];
  /** Once all is known. */
  whole?: { airMax_C: number[]; waves: HeatWave[]; options: [SeasonSide, SeasonSide][] };
}

/** Some days of one option, as a helper hands them back. */
export interface SeasonPart {
  option: number;
  from: number;
  sides: [{ days: SideDay[] }, { days: SideDay[] }];
}

/** A season with some more of its days. */
export function withPart(before: Season, { option, from, sides }: SeasonPart): Season {
  const calendar = before.calendar.map((of, i): Season["calendar"][number] => {
    if (i !== option) return of;
    const more = (side: 0 | 1) => of[side].map((day, at) => sides[side].days[at - from] ?? day);
    return [more(0), more(1)];
  });
  return { ...before, calendar };
}

/** What a calendar shows: its days, with the limits [°C] that outline their hours. */
export interface Drawn {
  days: readonly (SideDay | undefined)[];
  hot: number;
  burn: number;
}

/**
 * The days to be drawn where others stand. An outline ends at the next day that is over the limit as well, so the
 * neighbours of a changed day are drawn anew too; with other limits or another number of days all are.
 */
export function changedDays(now: Drawn, before: Drawn): number[] {
  const all = now.days.length !== before.days.length || now.hot !== before.hot || now.burn !== before.burn;
  const changed = (day: number) => now.days[day] !== before.days[day];
  return now.days.flatMap((_, day) => (all || changed(day - 1) || changed(day) || changed(day + 1) ? [day] : []));
}
