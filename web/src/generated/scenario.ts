/* Made from sim/scenario/schema.json by `npm run generate`; do not edit. */

/**
 * Scenario is one site under one sky with one to four options to compare.
 */
export interface Scenario {
  /**
   * SchemaVersion is the version of this document.
   */
  schemaVersion?: number;
  /**
   * Name is what the user calls this scenario.
   */
  name?: string;
  /**
   * Note says where the numbers come from; demo data is marked as invented here.
   */
  note?: string;
  site?: Site;
  weather?: Weather;
  season?: Season;
  fruit?: Fruit;
  limits?: Limits;
  frost?: Frost;
  crop?: Crop;
  weights?: Weights;
  /**
   * Seed chooses the vine that is drawn; the same seed gives the same vine.
   */
  seed?: number;
  /**
   * Compare is the index, from 0, of the option that the others are compared with.
   */
  compare?: number;
  /**
   * Options are the set-ups compared, one to four.
   *
   * @minItems 1
   * @maxItems 4
   */
  options: Option[];
  [k: string]: unknown;
}
/**
 * Site is the place, shared by all options.
 */
export interface Site {
  /**
   * Latitude is positive north.
   */
  latitude_deg?: number;
  /**
   * Longitude is positive east.
   */
  longitude_deg?: number;
  /**
   * Elevation above sea level sets the air pressure.
   */
  elevation_m?: number;
  /**
   * UTCOffset is the clock of all hours shown: local standard time, no daylight saving.
   */
  utcOffset_h?: number;
  /**
   * Slope of the ground; vines stay plumb.
   */
  slope_deg?: number;
  /**
   * Aspect is the compass direction that the slope faces, downhill, from true north.
   */
  aspect_deg?: number;
  /**
   * Floor is the surface between the rows.
   */
  floor?: "bare-dry" | "bare-moist" | "mown-cover" | "straw" | "pale";
  [k: string]: unknown;
}
/**
 * Weather is the day, shared by all options.
 */
export interface Weather {
  /**
   * Date is the day, as year-month-day.
   */
  date?: string;
  /**
   * AirMax is the highest air temperature of the day at screen height.
   */
  airMax_C?: number;
  /**
   * AirMin is the lowest air temperature of the day at screen height.
   */
  airMin_C?: number;
  /**
   * AirMaxLag is how long after the sun's highest point the air is hottest on a design day. Parton & Logan 1981 found 1.9 h on the plains; hot inland valleys run to 3 or 4 h (measured hours there).
   */
  airMaxLag_h?: number;
  /**
   * DewPoint is held constant over a design day.
   */
  dewPoint_C?: number;
  /**
   * Wind is the mean over the day at 10 m above open ground.
   */
  wind_ms?: number;
  /**
   * WindFrom is the compass direction that the wind comes from, from true north.
   */
  windFrom_deg?: number;
  /**
   * Ozone is the total ozone column.
   */
  ozone_cm?: number;
  /**
   * Water is the precipitable water of the column.
   */
  water_cm?: number;
  /**
   * AOD380 is the aerosol optical depth at 380 nm.
   */
  aod380?: number;
  /**
   * AOD500 is the aerosol optical depth at 500 nm.
   */
  aod500?: number;
  /**
   * Hours are 24 measured hours that replace the design-day curves; empty for a design day.
   *
   * @maxItems 24
   */
  hours?: Hour[];
  /**
   * Source names the file and place that the hours came from; empty for a design day.
   */
  source?: string;
  [k: string]: unknown;
}
/**
 * Hour is one measured hour, ending at its stamp: irradiances are means over it, the rest are values at its end, as in the typical-year formats. 24 hours make a day, hour 1 ends at 01:00 standard time.
 */
export interface Hour {
  /**
   * GHI is global horizontal irradiance.
   */
  ghi_Wm2: number;
  /**
   * DNI is direct normal irradiance.
   */
  dni_Wm2: number;
  /**
   * DHI is diffuse horizontal irradiance.
   */
  dhi_Wm2: number;
  /**
   * Air is the air temperature at screen height.
   */
  air_C: number;
  /**
   * DewPoint is the dew point at screen height.
   */
  dewPoint_C: number;
  /**
   * Wind is the wind speed at 10 m.
   */
  wind_ms: number;
  /**
   * WindFrom is the direction that the wind comes from, from true north.
   */
  windFrom_deg: number;
  /**
   * Longwave is the sky longwave on the horizontal; 0 when the file has none.
   */
  longwave_Wm2?: number;
  [k: string]: unknown;
}
/**
 * Season is when vines reach their stages, shared by all options.
 */
export interface Season {
  /**
   * Growth says whether the day shows vines and berries as the scenario gives them, or as far as they have grown by its date; the scenario then gives them full-grown.
   */
  growth?: "as-given" | "by-date";
  /**
   * FruitSet is the day of fruit set; without one it is usual for a hot district. Years do not count.
   */
  fruitSet?: string;
  /**
   * Veraison is the day of first colour; without one it is usual for a hot district.
   */
  veraison?: string;
  /**
   * Harvest is the day of harvest; without one it is usual for a hot district.
   */
  harvest?: string;
  [k: string]: unknown;
}
/**
 * Fruit is the variety and its state on that day, shared by all options.
 */
export interface Fruit {
  /**
   * Colour of the berries on the day; before veraison all berries are green.
   */
  colour?: "green" | "white" | "red";
  /**
   * Diameter of one berry.
   */
  diameter_mm?: number;
  /**
   * Compactness of the bunch: 0 loose, 1 tight.
   */
  compactness?: number;
  /**
   * Absorptance is the share of sunlight that the skin absorbs; 0 takes the value of the colour.
   */
  absorptance?: number;
  /**
   * Skin is how much heat the skin of the cultivar stands, against the mean of cultivars.
   */
  skin?: "tender" | "middling" | "hardy";
  /**
   * Hardening is how the fruit has lived until this day: uncovered within the last week, as the form leaves it, or in the sun since it set.
   */
  hardening?: "newly-uncovered" | "usual" | "early-exposed";
  [k: string]: unknown;
}
/**
 * Limits are the temperatures and doses above which fruit is said to be at risk.
 */
export interface Limits {
  /**
   * Watch is the lowest of the three counted berry surface temperatures.
   */
  watch_C?: number;
  /**
   * Hot is the middle one.
   */
  hot_C?: number;
  /**
   * Burn is the highest one.
   */
  burn_C?: number;
  /**
   * T50 is the berry surface temperature that kills half of the skins of a middling cultivar within 30 minutes.
   */
  t50_C?: number;
  /**
   * Doubling is the rise in temperature that doubles the rate of damage.
   */
  doubling_K?: number;
  /**
   * Tolerated is how far below T50 a skin still repairs damage as fast as it is done.
   */
  tolerated_K?: number;
  /**
   * Cultivar is how far T50 of tender and hardy skins lies below and above it.
   */
  cultivar_K?: number;
  /**
   * Uncovered is how far T50 of newly uncovered fruit lies below it.
   */
  uncovered_K?: number;
  /**
   * Hardened is how far T50 of fruit exposed since it set lies above it.
   */
  hardened_K?: number;
  [k: string]: unknown;
}
/**
 * Frost is the cold night of spring, shared by all options.
 */
export interface Frost {
  /**
   * Lowest says where the lowest air temperature comes from: typed here, or that of the day of the weather.
   */
  lowest?: "typed" | "weather";
  /**
   * AirMin is the lowest air temperature of the night, 1.5 m above the ground, as typed.
   */
  airMin_C?: number;
  /**
   * Wind is that of the coldest hours, 10 m above open ground, as typed.
   */
  wind_ms?: number;
  /**
   * Cloud is the share of the sky that clouds cover.
   */
  cloud?: number;
  /**
   * Inversion is how much the air of a calm clear night warms when the height grows by the factor e; published nights run from 0.3 to 2.4 K, about 0.6 K is typical.
   */
  inversion_K?: number;
  /**
   * Stage is how far the buds have come.
   */
  stage?: "first-swell" | "full-swell" | "bud-burst" | "first-leaf" | "second-leaf" | "third-leaf" | "fourth-leaf";
  /**
   * Group is the group of cultivars, by the cold that its buds stand.
   */
  group?: "vinifera" | "american";
  /**
   * HalfKilled is the temperature that kills half of the buds; 0 takes that of the stage and the group.
   */
  halfKilled_C?: number;
  [k: string]: unknown;
}
/**
 * Crop is what vines can carry, fruit brings and hands do, shared by all options.
 */
export interface Crop {
  /**
   * Prunings is the weight of one-year wood cut off in winter per metre of row, as the vines of the site grow now: their vigour, whatever the form. The middle of the balanced range of one curtain, 0.5 to 1.0 (Kliewer & Dokoozlian 2005).
   */
  prunings_kg_per_m?: number;
  /**
   * FirstNodes are the nodes that balanced pruning keeps for the first pound of prunings of a vine.
   */
  firstNodes?: number;
  /**
   * MoreNodes are the nodes that it keeps for each further pound.
   */
  moreNodes?: number;
  /**
   * Spread is how far a yield may lie off either way, as a share of it: the seasons and what is counted wrong.
   */
  spread?: number;
  /**
   * Price is what a tonne of fruit brings, in the user's own money; 0 computes no income.
   */
  price_per_t?: number;
  /**
   * SpurTime is the time to cut one spur.
   */
  spurTime_s?: number;
  /**
   * CaneTime is the time to choose, cut and tie one cane.
   */
  caneTime_s?: number;
  /**
   * ShootTime is the time to put one shoot in its place, or to take it out.
   */
  shootTime_s?: number;
  /**
   * LeafTime is the time to pull all leaves of the fruit zone on one metre of one side.
   */
  leafTime_s?: number;
  [k: string]: unknown;
}
/**
 * Weights are what matters to the reader.
 */
export interface Weights {
  /**
   * Heat is how much it matters that the hottest fruit stays cool.
   */
  heat?: number;
  /**
   * Light is how much it matters that the fruit has the light that is wished.
   */
  light?: number;
  /**
   * LightWish is whether more light on the fruit is better, or less.
   */
  lightWish?: "more" | "less";
  /**
   * Frost is how much it matters that buds stay above the temperatures that kill them.
   */
  frost?: number;
  /**
   * Crop is how much the weight of fruit matters.
   */
  crop?: number;
  /**
   * Work is how much it matters that the work by hand is little.
   */
  work?: number;
  [k: string]: unknown;
}
/**
 * Option is one way to plant, train and shade the vines of the site.
 */
export interface Option {
  /**
   * Name is what the user calls this option; empty takes the name of the form.
   */
  name?: string;
  /**
   * Form is the key of the training form whose sizes are the defaults of all that follows.
   */
  form?: string;
  rows?: Rows;
  trellis?: Trellis;
  training?: Training;
  shoots?: Shoots;
  leaves?: Leaves;
  bunches?: Bunches;
  shade?: Shade;
  cost?: Cost;
  [k: string]: unknown;
}
/**
 * Rows is the planting.
 */
export interface Rows {
  /**
   * Azimuth is the compass direction of the row line, clockwise from true north; 0 and 180 are the same row.
   */
  azimuth_deg?: number;
  /**
   * RowSpacing is the distance between row lines.
   */
  rowSpacing_m?: number;
  /**
   * VineSpacing is the distance between vines in the row.
   */
  vineSpacing_m?: number;
  [k: string]: unknown;
}
/**
 * Trellis is the posts and wires.
 */
export interface Trellis {
  /**
   * Wires run along the row; vines that stand free have none.
   *
   * @maxItems 24
   */
  wires?: Wire[];
  /**
   * PostSpacing is the distance between line posts.
   */
  postSpacing_m?: number;
  /**
   * CrossWires is the distance between wires across the row that join the roof wires into a net; 0 for none.
   */
  crossWires_m?: number;
  /**
   * AfternoonWire is the height of one more foliage wire on the afternoon side of the row, over which shoots lean out; 0 for none. On east-west rows that is the side that faces the equator.
   */
  afternoonWire_m?: number;
  /**
   * AfternoonOut is how far from the row line it runs.
   */
  afternoonOut_m?: number;
  [k: string]: unknown;
}
/**
 * Wire is one wire along the row.
 */
export interface Wire {
  /**
   * Height above the ground at the row line.
   */
  height_m?: number;
  /**
   * Offset sideways from the row line, positive on the side that lies clockwise of the row azimuth (the east side of a north-south row).
   */
  offset_m?: number;
  /**
   * Role is what the wire does: carry arms (fruiting); hold shoots that lie over it (foliage); in pairs, hold shoots upright between them, or below the arms those turned down (catch); hold the ends of bent canes (tie); or, side by side overhead, carry shoots spread over them (roof).
   */
  role?: "fruiting" | "foliage" | "catch" | "tie" | "roof";
  [k: string]: unknown;
}
/**
 * Training is where the permanent wood goes.
 */
export interface Training {
  /**
   * ArmsPerVine is the number of arms of one vine, shared out over the fruiting wires.
   */
  armsPerVine?: number;
  /**
   * ArmLayout is where the arms go: along their fruiting wires, or spread from the head to all sides.
   */
  armLayout?: "along" | "spread";
  /**
   * ArmLength is the length of spread arms; those along a wire reach half way to the next vine.
   */
  armLength_m?: number;
  /**
   * ArmRise is the inclination of spread arms above the horizontal; under roof wires they lie on the roof.
   */
  armRise_deg?: number;
  /**
   * HeadHeight is the height at which the arms of a vine without fruiting wire leave the trunk.
   */
  headHeight_m?: number;
  /**
   * Wood is what is left at pruning: spurs on cordons, or canes.
   */
  wood?: "spurs" | "canes";
  /**
   * SpurSpacing is the distance between spurs along a cordon, and between canes that leave one.
   */
  spurSpacing_m?: number;
  /**
   * CaneLayout is where canes go: they are the arms themselves (along), or leave a cordon and are arched over and tied to a tie wire below (arched), bent straight down to it (tied-down), or hang as they like (free).
   */
  caneLayout?: "along" | "arched" | "tied-down" | "free";
  /**
   * CaneNodes is the number of nodes of a cane that leaves a cordon; it sets the length of the cane.
   */
  caneNodes?: number;
  /**
   * BareBase is the part of a spread arm, or of a cane that leaves a cordon, that bears no shoots, from its base.
   */
  bareBase?: number;
  /**
   * SingleArmVines is the share of vines that keep one arm only; the rest of their wire stays bare.
   */
  singleArmVines?: number;
  /**
   * YoungVines is the share of vines whose arms have grown to half of their length.
   */
  youngVines?: number;
  /**
   * MissingVines is the share of vines that are not there.
   */
  missingVines?: number;
  /**
   * BlindNodes is the share of the places for shoots that stay without one.
   */
  blindNodes?: number;
  [k: string]: unknown;
}
/**
 * Shoots is the growth of the season.
 */
export interface Shoots {
  /**
   * PerMetre counts shoots per metre of canopy (per metre of fruiting wire, or of the row where arms spread) on full-grown vines, before any are thinned.
   */
  perMetre?: number;
  /**
   * Length is the mean length of a shoot, before any trimming.
   */
  length_m?: number;
  /**
   * Internode is the mean distance between nodes.
   */
  internode_cm?: number;
  /**
   * Habit is how the variety holds its shoots: 1 upright, 0 trailing.
   */
  habit?: number;
  /**
   * Start is the inclination above the horizontal at which shoots leave the wood; negative points down.
   */
  start_deg?: number;
  /**
   * Positioning is the share of shoots that the crew has put where the wires are meant to hold them.
   */
  positioning?: number;
  /**
   * CombedDown is the share of shoots combed to hang down.
   */
  combedDown?: number;
  /**
   * TurnedDown is the share of shoots turned down, on the lowest fruiting wires first; catch wires below the arms hold them.
   */
  turnedDown?: number;
  /**
   * Thinned is the share of shoots taken out, evenly along the wood.
   */
  thinned?: number;
  /**
   * TrimTop is the height at which shoots are hedged; 0 leaves them.
   */
  trimTop_m?: number;
  /**
   * TrimSide is the distance from the row line at which both sides are hedged; 0 leaves them.
   */
  trimSide_m?: number;
  /**
   * Skirt is the height at which hanging shoots are cut off below; 0 leaves them.
   */
  skirt_m?: number;
  [k: string]: unknown;
}
/**
 * Leaves is the leaf area that the shoots carry.
 */
export interface Leaves {
  /**
   * Area is one-sided leaf area per metre of canopy (per metre of fruiting wire, or of the row where arms spread) on full-grown vines, before shoots are thinned or cut and leaves pulled; it is given, and leaf density follows.
   */
  area_m2_per_m?: number;
  /**
   * Blade is the mean area of one full-grown primary leaf.
   */
  blade_cm2?: number;
  /**
   * Laterals is the share of the leaf area that grows on laterals.
   */
  laterals?: number;
  /**
   * Water is how the vines are watered: without want, short of water, or thirsty. It sets how far leaves open to cool themselves; it changes neither their area nor where they hang.
   */
  water?: "watered" | "short" | "thirsty";
  /**
   * RemovedMorning is the share of leaves pulled on the morning side of the row.
   */
  removedMorning?: number;
  /**
   * RemovedAfternoon is the share of leaves pulled on the afternoon side of the row.
   */
  removedAfternoon?: number;
  /**
   * RemovedFrom is the height from which leaves are pulled where RemovedTo gives a band of its own.
   */
  removedFrom_m?: number;
  /**
   * RemovedTo is the height up to which leaves are pulled; 0 pulls them in the fruit zone, from just above to just below the bunches.
   */
  removedTo_m?: number;
  /**
   * RemovedOn is the date on which leaves are pulled, as year-month-day of any year: before it they hang, and in the week after it the fruit is newly uncovered. Without a date they were pulled long before.
   */
  removedOn?: string;
  [k: string]: unknown;
}
/**
 * Bunches is the crop.
 */
export interface Bunches {
  /**
   * PerShoot is the mean number of bunches on a shoot.
   */
  perShoot?: number;
  /**
   * Mass of one bunch.
   */
  mass_g?: number;
  [k: string]: unknown;
}
/**
 * Shade is the nets, films and mist that keep sun and heat off.
 */
export interface Shade {
  /**
   * NetSides are the sides of the row whose fruit zone a net covers. On east-west rows the side that faces away from the equator counts as the morning side.
   */
  netSides?: "none" | "morning" | "afternoon" | "both";
  /**
   * NetShade is the share of light that the threads of that net stop where it comes straight on: the shade factor.
   */
  netShade?: number;
  /**
   * NetColour of that net sets how much of what its threads stop goes on as diffuse light.
   */
  netColour?: "black" | "green" | "white" | "pearl";
  /**
   * NetFrom is the height of its lower edge where NetTo gives a band of its own.
   */
  netFrom_m?: number;
  /**
   * NetTo is the height of its upper edge; 0 covers the fruit zone, from just above to just below the bunches.
   */
  netTo_m?: number;
  /**
   * NetDistance is how far from the row line it hangs, or where the fruit reaches farther, against the fruit.
   */
  netDistance_m?: number;
  /**
   * BirdNet is a net of thin thread and wide mesh that lies over each row.
   */
  birdNet?: "none" | "draped";
  /**
   * OverheadShade is the shade factor of a net over all rows; 0 for none.
   */
  overheadShade?: number;
  /**
   * OverheadColour is that of the net over all rows.
   */
  overheadColour?: "black" | "green" | "white" | "pearl";
  /**
   * OverheadHeight is how high the net over all rows hangs. It must clear the wires; light and heat are the same for every height above the canopy.
   */
  overheadHeight_m?: number;
  /**
   * Film is how much of fruit and leaves a sprayed particle film whitens.
   */
  film?: "none" | "light" | "full";
  /**
   * MistRate is the water that misters spread over the ground area while they run; 0 for none.
   */
  mistRate_mmh?: number;
  /**
   * MistAbove is the air temperature above which they run.
   */
  mistAbove_C?: number;
  /**
   * MistFrom is the clock hour from which they may run.
   */
  mistFrom_h?: number;
  /**
   * MistTo is the clock hour up to which they may run.
   */
  mistTo_h?: number;
  [k: string]: unknown;
}
/**
 * Cost is what it costs.
 */
export interface Cost {
  /**
   * Year is what a hectare costs in a year, the trellis paid off over its life included, in the user's own money; 0 computes no income.
   */
  year_per_ha?: number;
  [k: string]: unknown;
}
