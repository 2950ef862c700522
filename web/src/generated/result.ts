/* Made from sim/result/schema.json by `npm run generate`; do not edit. */

/**
 * Day is the answer to one scenario on one day.
 */
export interface Day {
  modelVersion: string;
  name: string;
  date: string;
  utcOffset_h: number;
  /**
   * between instants [min]
   */
  step_min: number;
  /**
   * clock hours of the instants, 0 … 24 [h]
   */
  hour: number[];
  sun: Sun;
  air: Air;
  /**
   * in the order of the scenario
   */
  options: OptionResult[];
  /**
   * one per option other than the compared one
   */
  comparison: Sentence[];
  ranges?: Ranges;
  weighing?: Weighing;
  scenario: Scenario;
}
/**
 * at the instants
 */
export interface Sun {
  /**
   * true, geometric
   */
  elevation_deg: number[];
  /**
   * from true north, clockwise
   */
  azimuth_deg: number[];
  /**
   * clock hour; NaN is never written: see Polar
   */
  rise_h: number;
  transit_h: number;
  set_h: number;
  /**
   * "day" or "night" when the sun does not rise and set
   */
  polar?: string;
}
/**
 * at the instants
 */
export interface Air {
  temperature_C: number[];
  dewPoint_C: number[];
  /**
   * at 10 m
   */
  wind_ms: number[];
  ghi_Wm2: number[];
  dni_Wm2: number[];
  dhi_Wm2: number[];
}
/**
 * Option is the answer for one option.
 */
export interface OptionResult {
  name: string;
  form: string;
  canopy: Canopy;
  /**
   * scenario.Left, scenario.Right
   *
   * @minItems 2
   * @maxItems 2
   */
  sides: Side[];
  verdict: Sentence;
  /**
   * Notices are what a grower would find wrong with the design; none keeps the option from being computed.
   */
  notices: Fault[];
}
/**
 * Canopy is what the stand of the option measures.
 */
export interface Canopy {
  /**
   * per metre of canopy
   */
  leafArea_m2_per_m: number;
  /**
   * of ground
   */
  leafArea_m2_per_ha: number;
  /**
   * leaf area per ground area
   */
  leafAreaIndex: number;
  leafDensity_m2_m3: number;
  /**
   * mean contacts of a horizontal probe at fruit height
   */
  leafLayers: number;
  /**
   * share of such probes that touch neither leaf nor bunch
   */
  gaps: number;
  /**
   * share of bunches with no leaf in front of at least one face
   */
  exteriorBunches: number;
  /**
   * outside of the canopy by tape, less its gaps
   */
  exposedLeaf_m2_per_ha: number;
  /**
   * height of the canopy over the free width between rows; 0 without an alley
   */
  heightToGap: number;
  /**
   * leaf area over the mass of fruit; 0 without fruit
   */
  leafToFruit_m2_per_kg: number;
  /**
   * share of the day's light (PAR) that does not reach the floor [0–1]
   */
  intercepted: number;
  /**
   * mean
   */
  fruitHeight_m: number;
  top_m: number;
  /**
   * of the middle 90 % of the leaf area
   */
  width_m: number;
  shootsPerVine: number;
  bunchesPerVine: number;
  /**
   * bunch faces per side in the sample
   */
  faces: number;
}
/**
 * Side is the fruit that looks to one side of the row.
 */
export interface Side {
  /**
   * "west", "south-west"
   */
  compass: string;
  /**
   * direction that the side faces
   */
  azimuth_deg: number;
  sunSide: string;
  steps: Steps;
  summary: Summary;
}
/**
 * Steps are the courses over the day, one value per instant.
 */
export interface Steps {
  /**
   * share of faces in the direct sun [0–1]
   */
  litShare: number[];
  /**
   * mean sunlight on the face, direct and diffuse, on its outward surface
   */
  light_Wm2: number[];
  /**
   * mean over faces of the berry surface temperature at its hottest point
   */
  mean_C: number[];
  /**
   * mean of the hottest tenth of faces at the instant
   */
  hottest_C: number[];
  /**
   * mean of the coolest tenth
   */
  coolest_C: number[];
  /**
   * mean over faces of the whole-berry temperature
   */
  berry_C: number[];
  /**
   * air at fruit height
   */
  airNear_C: number[];
  /**
   * wind at the fruit
   */
  windNear_ms: number[];
}
/**
 * Summary is the day in a few numbers. Hours over a limit are the mean over faces of the time that the hottest point of the berry spends over it; those of the hottest fruit are the time that Steps.Hottest_C is over it, whichever faces make up that tenth at the moment.
 */
export interface Summary {
  /**
   * mean over faces of the hours in direct sun
   */
  lit_h: number;
  /**
   * daily sunlight on the face
   */
  light_MJm2: number;
  /**
   * highest of Steps.Hottest_C
   */
  hottest_C: number;
  /**
   * clock hour of it
   */
  hottestAt_h: number;
  /**
   * highest of Steps.Mean_C
   */
  meanMax_C: number;
  /**
   * hours over limits.watch_C, mean over faces
   */
  overWatch_h: number;
  /**
   * hours over limits.hot_C
   */
  overHot_h: number;
  /**
   * hours over limits.burn_C
   */
  overBurn_h: number;
  /**
   * hours of the hottest fruit over limits.watch_C
   */
  hottestOverWatch_h: number;
  /**
   * over limits.hot_C
   */
  hottestOverHot_h: number;
  /**
   * over limits.burn_C
   */
  hottestOverBurn_h: number;
  /**
   * share of fruit at risk of sunburn necrosis [0–1]
   */
  atRisk: number;
  /**
   * browning dose, mean over faces
   */
  browning: number;
}
/**
 * Sentence is a verdict or comparison as a code of the text catalogue and its parameters.
 */
export interface Sentence {
  code: string;
  words?: {
    [k: string]: string;
  };
  values?: {
    [k: string]: number;
  };
}
/**
 * Fault is one thing wrong with a document, as a code of the text catalogue of sim/words and its parameters, so that page and command line say it in the same words.
 */
export interface Fault {
  /**
   * Code names the kind of fault, such as "fault.range".
   */
  code: string;
  /**
   * Path is the JSON Pointer (RFC 6901) of the field; empty for the whole document.
   */
  path: string;
  /**
   * Values are the parameters of the text: value, min, max, unit, allowed …
   */
  values?: {};
}
/**
 * none when they were not asked for
 */
export interface Ranges {
  draws: number;
  /**
   * that were drawn
   */
  inputs: Input[];
  /**
   * in the order of the scenario
   */
  options: OptionBands[];
  /**
   * one per option other than the compared one
   */
  differences: Difference[];
}
/**
 * Input is one uncertain input.
 */
export interface Input {
  /**
   * by which Band.Most names it
   */
  key: string;
  /**
   * for reading; sim/words has it
   */
  name?: string;
  /**
   * least value
   */
  low: number;
  /**
   * with which the central numbers are computed
   */
  usual: number;
  /**
   * largest value
   */
  high: number;
  /**
   * "1" for factors and shares
   */
  unit: string;
  /**
   * where the range is from; sim/words has it
   */
  source?: string;
}
/**
 * OptionBands are the bands of one option.
 */
export interface OptionBands {
  /**
   * scenario.Left, scenario.Right
   *
   * @minItems 2
   * @maxItems 2
   */
  sides: SummaryBands[];
  /**
   * likewise, at the whole hours from before sunrise to after sunset
   *
   * @minItems 2
   * @maxItems 2
   */
  hours: HourBands[][];
}
/**
 * SummaryBands are the bands of the numbers of a Summary.
 */
export interface SummaryBands {
  lit_h: Band;
  light_MJm2: Band;
  hottest_C: Band;
  hottestAt_h: Band;
  meanMax_C: Band;
  overWatch_h: Band;
  overHot_h: Band;
  overBurn_h: Band;
  hottestOverWatch_h: Band;
  hottestOverHot_h: Band;
  hottestOverBurn_h: Band;
  atRisk: Band;
  browning: Band;
}
/**
 * Band is the range in which four fifths of the draws lie; it always holds the central number.
 */
export interface Band {
  /**
   * a tenth of the draws lies below
   */
  low: number;
  /**
   * a tenth lies above
   */
  high: number;
  /**
   * input that the number follows most; empty when it follows none
   */
  most?: string;
  /**
   * Error is the standard error of Low and High, the larger of both, as if the draws were random; draws that are spread evenly do better.
   */
  error: number;
}
/**
 * HourBands are the bands of the numbers of one side at an hour.
 */
export interface HourBands {
  hour_h: number;
  litShare: Reach;
  mean_C: Reach;
  hottest_C: Reach;
}
/**
 * Reach is a band alone.
 */
export interface Reach {
  low: number;
  high: number;
}
/**
 * Difference is how the fruit of one option differs from that of the compared one, each on the side where its hottest fruit is hotter: option minus compared.
 */
export interface Difference {
  /**
   * index in the scenario
   */
  option: number;
  /**
   * index of the other
   */
  compared: number;
  hottest_K: Versus;
  hottestOverWatch_h: Versus;
  hottestOverHot_h: Versus;
  hottestOverBurn_h: Versus;
  atRisk: Versus;
}
/**
 * Versus is a difference with its band, and how often it is of either sign. More is worse.
 */
export interface Versus {
  central: number;
  /**
   * a tenth of the draws lies below
   */
  low: number;
  /**
   * a tenth lies above
   */
  high: number;
  /**
   * share of draws in which the option is worse than the compared one [0–1]
   */
  worse: number;
  /**
   * share in which it is better; the rest are equal
   */
  better: number;
}
/**
 * frost, crop, work and water beside light and heat
 */
export interface Weighing {
  night: Night;
  /**
   * in the order of the scenario
   */
  options: Weighed[];
  /**
   * Order lists the options by the weights of the reader, the best first; empty when all weights are 0.
   */
  order: Placed[];
  /**
   * Terms are the numbers that the texts of the columns name.
   */
  terms: {
    [k: string]: number;
  };
}
/**
 * Night is the air of the frost night by height.
 */
export interface Night {
  /**
   * at screen height
   */
  lowest_C: number;
  screen_m: number;
  /**
   * at 10 m
   */
  wind_ms: number;
  inversion_K: Estimate;
  height_m: number[];
  /**
   * at these heights
   */
  air_C: number[];
  /**
   * with the weakest published inversion
   */
  weak_C: number[];
  /**
   * with the strongest
   */
  strong_C: number[];
  /**
   * kills a tenth of the buds
   */
  kill10_C: number;
  kill50_C: number;
  kill90_C: number;
  /**
   * code of the text that says where these are from
   */
  killSource: string;
}
/**
 * warming for each growth of the height by the factor e; 0 in wind or under clouds
 */
export interface Estimate {
  low: number;
  value: number;
  high: number;
}
/**
 * Weighed is one option.
 */
export interface Weighed {
  name: string;
  heat_C: Estimate1;
  light_MJm2: Estimate2;
  frost: OptionFrost;
  crop: OptionCrop;
  work: OptionWork;
  water: OptionWater;
  /**
   * Colour is how long the berries are over 35 °C, on the worse side: colour fails to form and fades there [h].
   */
  colour_h: number;
}
/**
 * hottest fruit of the day, on the worse side
 */
export interface Estimate1 {
  low: number;
  value: number;
  high: number;
}
/**
 * sunlight on the fruit of the day, mean of both sides
 */
export interface Estimate2 {
  low: number;
  value: number;
  high: number;
}
/**
 * OptionFrost is the buds of an option in the night.
 */
export interface OptionFrost {
  /**
   * a twentieth of the buds is lower
   */
  lowest_m: number;
  /**
   * mean
   */
  buds_m: number;
  /**
   * a twentieth is higher
   */
  highest_m: number;
  air_C: Estimate3;
  margin_K: Estimate4;
  killed: Estimate5;
  raised_K: Estimate6;
  raise_m: number;
  verdict: Sentence;
}
/**
 * at the buds
 */
export interface Estimate3 {
  low: number;
  value: number;
  high: number;
}
/**
 * above the temperature that kills a tenth of the buds
 */
export interface Estimate4 {
  low: number;
  value: number;
  high: number;
}
/**
 * share of the buds
 */
export interface Estimate5 {
  low: number;
  value: number;
  high: number;
}
/**
 * what a cordon raised by Raise_m buys
 */
export interface Estimate6 {
  low: number;
  value: number;
  high: number;
}
/**
 * OptionCrop is the crop of an option, by its own numbers: full-grown vines, and as many of them as the option says.
 */
export interface OptionCrop {
  vinesPerHa: number;
  /**
   * length of canopy of one vine
   */
  canopy_m: number;
  /**
   * kept at pruning, on a full-grown vine
   */
  nodesPerVine: number;
  /**
   * of one vine; 0 on canes
   */
  spurs: number;
  /**
   * of one vine; 0 on spurs
   */
  canes: number;
  /**
   * on the vines that are there, blind nodes and thinned shoots off
   */
  shootsPerVine: number;
  bunchesPerVine: number;
  bunch_g: number;
  berry_g: number;
  berriesPerBunch: number;
  perVine_kg: Estimate7;
  perHa_t: Estimate8;
  perAcre_ton: Estimate9;
  /**
   * of canopy: those of the site spread over it
   */
  prunings_kg_per_m: number;
  yieldToPrunings: Estimate8;
  leafToFruit_m2_per_kg: Estimate8;
  /**
   * that balanced pruning would keep
   */
  balancedNodes: number;
  /**
   * share of the canopy that the vigour of the site fills
   */
  filled: number;
  balance: Sentence1;
  verdict: Sentence;
  fourArms?: FourArms;
  income?: Income;
}
/**
 * mean over all places, missing vines too
 */
export interface Estimate7 {
  low: number;
  value: number;
  high: number;
}
/**
 * Estimate is a number with the range that its sources and assumptions leave. Where the range is not known, low and high are the value.
 */
export interface Estimate8 {
  low: number;
  value: number;
  high: number;
}
/**
 * Estimate is a number with the range that its sources and assumptions leave. Where the range is not known, low and high are the value.
 */
export interface Estimate9 {
  low: number;
  value: number;
  high: number;
}
/**
 * Sentence is a verdict or comparison as a code of the text catalogue and its parameters.
 */
export interface Sentence1 {
  code: string;
  words?: {
    [k: string]: string;
  };
  values?: {
    [k: string]: number;
  };
}
/**
 * only where the vines have two arms
 */
export interface FourArms {
  sameNodes_t_per_ha: Estimate10;
  twiceNodes_t_per_ha: Estimate11;
  /**
   * of the longer canopy
   */
  prunings_kg_per_m: number;
  /**
   * share of the four arms that the vigour of the site fills
   */
  filled: number;
  verdict: Sentence;
}
/**
 * Estimate is a number with the range that its sources and assumptions leave. Where the range is not known, low and high are the value.
 */
export interface Estimate10 {
  low: number;
  value: number;
  high: number;
}
/**
 * Estimate is a number with the range that its sources and assumptions leave. Where the range is not known, low and high are the value.
 */
export interface Estimate11 {
  low: number;
  value: number;
  high: number;
}
/**
 * only with a price and a cost
 */
export interface Income {
  perHa: Estimate12;
  breakEven_t_per_ha: number;
}
/**
 * Estimate is a number with the range that its sources and assumptions leave. Where the range is not known, low and high are the value.
 */
export interface Estimate12 {
  low: number;
  value: number;
  high: number;
}
/**
 * OptionWork is the work by hand that forms differ in [h/ha and year]; picking, sprays and mowing are not in it.
 */
export interface OptionWork {
  prune_h: number;
  shoots_h: number;
  leaves_h: number;
  total_h: Estimate8;
}
/**
 * OptionWater is what the canopy drinks, by its shade.
 */
export interface OptionWater {
  /**
   * share of the ground that is in shade at noon
   */
  shaded: number;
  cropCoefficient: Estimate8;
}
/**
 * Placed is one option in the order of the reader's weights.
 */
export interface Placed {
  /**
   * index in the scenario
   */
  option: number;
  score: Estimate13;
  /**
   * its range lies above that of the next one
   */
  decided: boolean;
}
/**
 * Estimate is a number with the range that its sources and assumptions leave. Where the range is not known, low and high are the value.
 */
export interface Estimate13 {
  low: number;
  value: number;
  high: number;
}
/**
 * the document after defaults
 */
export interface Scenario {
  /**
   * SchemaVersion is the version of this document.
   */
  schemaVersion: number;
  /**
   * Name is what the user calls this scenario.
   */
  name: string;
  /**
   * Note says where the numbers come from; demo data is marked as invented here.
   */
  note: string;
  site: Site;
  weather: Weather;
  season: Season;
  fruit: Fruit;
  limits: Limits;
  frost: Frost;
  crop: Crop;
  weights: Weights;
  /**
   * Seed chooses the vine that is drawn; the same seed gives the same vine.
   */
  seed: number;
  /**
   * Compare is the index, from 0, of the option that the others are compared with.
   */
  compare: number;
  /**
   * Options are the set-ups compared, one to four.
   *
   * @minItems 1
   * @maxItems 4
   */
  options: Option[];
}
/**
 * Site is the place, shared by all options.
 */
export interface Site {
  /**
   * Latitude is positive north.
   */
  latitude_deg: number;
  /**
   * Longitude is positive east.
   */
  longitude_deg: number;
  /**
   * Elevation above sea level sets the air pressure.
   */
  elevation_m: number;
  /**
   * UTCOffset is the clock of all hours shown: local standard time, no daylight saving.
   */
  utcOffset_h: number;
  /**
   * Slope of the ground; vines stay plumb.
   */
  slope_deg: number;
  /**
   * Aspect is the compass direction that the slope faces, downhill, from true north.
   */
  aspect_deg: number;
  /**
   * Floor is the surface between the rows.
   */
  floor: "bare-dry" | "bare-moist" | "mown-cover" | "straw" | "pale";
}
/**
 * Weather is the day, shared by all options.
 */
export interface Weather {
  /**
   * Date is the day, as year-month-day.
   */
  date: string;
  /**
   * AirMax is the highest air temperature of the day at screen height.
   */
  airMax_C: number;
  /**
   * AirMin is the lowest air temperature of the day at screen height.
   */
  airMin_C: number;
  /**
   * AirMaxLag is how long after the sun's highest point the air is hottest on a design day. Parton & Logan 1981 found 1.9 h on the plains; hot inland valleys run to 3 or 4 h (measured hours there).
   */
  airMaxLag_h: number;
  /**
   * DewPoint is held constant over a design day.
   */
  dewPoint_C: number;
  /**
   * Wind is the mean over the day at 10 m above open ground.
   */
  wind_ms: number;
  /**
   * WindFrom is the compass direction that the wind comes from, from true north.
   */
  windFrom_deg: number;
  /**
   * Ozone is the total ozone column.
   */
  ozone_cm: number;
  /**
   * Water is the precipitable water of the column.
   */
  water_cm: number;
  /**
   * AOD380 is the aerosol optical depth at 380 nm.
   */
  aod380: number;
  /**
   * AOD500 is the aerosol optical depth at 500 nm.
   */
  aod500: number;
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
  longwave_Wm2: number;
}
/**
 * Season is when vines reach their stages, shared by all options.
 */
export interface Season {
  /**
   * Growth says whether the day shows vines and berries as the scenario gives them, or as far as they have grown by its date; the scenario then gives them full-grown.
   */
  growth: "as-given" | "by-date";
  /**
   * FruitSet is the day of fruit set; without one it is usual for a hot district. Years do not count.
   */
  fruitSet: string;
  /**
   * Veraison is the day of first colour; without one it is usual for a hot district.
   */
  veraison: string;
  /**
   * Harvest is the day of harvest; without one it is usual for a hot district.
   */
  harvest: string;
}
/**
 * Fruit is the variety and its state on that day, shared by all options.
 */
export interface Fruit {
  /**
   * Colour of the berries on the day; before veraison all berries are green.
   */
  colour: "green" | "white" | "red";
  /**
   * Diameter of one berry.
   */
  diameter_mm: number;
  /**
   * Compactness of the bunch: 0 loose, 1 tight.
   */
  compactness: number;
  /**
   * Absorptance is the share of sunlight that the skin absorbs; 0 takes the value of the colour.
   */
  absorptance: number;
  /**
   * Skin is how much heat the skin of the cultivar stands, against the mean of cultivars.
   */
  skin: "tender" | "middling" | "hardy";
  /**
   * Hardening is how the fruit has lived until this day: uncovered within the last week, as the form leaves it, or in the sun since it set.
   */
  hardening: "newly-uncovered" | "usual" | "early-exposed";
}
/**
 * Limits are the temperatures and doses above which fruit is said to be at risk.
 */
export interface Limits {
  /**
   * Watch is the lowest of the three counted berry surface temperatures.
   */
  watch_C: number;
  /**
   * Hot is the middle one.
   */
  hot_C: number;
  /**
   * Burn is the highest one.
   */
  burn_C: number;
  /**
   * T50 is the berry surface temperature that kills half of the skins of a middling cultivar within 30 minutes.
   */
  t50_C: number;
  /**
   * Doubling is the rise in temperature that doubles the rate of damage.
   */
  doubling_K: number;
  /**
   * Tolerated is how far below T50 a skin still repairs damage as fast as it is done.
   */
  tolerated_K: number;
  /**
   * Cultivar is how far T50 of tender and hardy skins lies below and above it.
   */
  cultivar_K: number;
  /**
   * Uncovered is how far T50 of newly uncovered fruit lies below it.
   */
  uncovered_K: number;
  /**
   * Hardened is how far T50 of fruit exposed since it set lies above it.
   */
  hardened_K: number;
}
/**
 * Frost is the cold night of spring, shared by all options.
 */
export interface Frost {
  /**
   * Lowest says where the lowest air temperature comes from: typed here, or that of the day of the weather.
   */
  lowest: "typed" | "weather";
  /**
   * AirMin is the lowest air temperature of the night, 1.5 m above the ground, as typed.
   */
  airMin_C: number;
  /**
   * Wind is that of the coldest hours, 10 m above open ground, as typed.
   */
  wind_ms: number;
  /**
   * Cloud is the share of the sky that clouds cover.
   */
  cloud: number;
  /**
   * Inversion is how much the air of a calm clear night warms when the height grows by the factor e; published nights run from 0.3 to 2.4 K, about 0.6 K is typical.
   */
  inversion_K: number;
  /**
   * Stage is how far the buds have come.
   */
  stage: "first-swell" | "full-swell" | "bud-burst" | "first-leaf" | "second-leaf" | "third-leaf" | "fourth-leaf";
  /**
   * Group is the group of cultivars, by the cold that its buds stand.
   */
  group: "vinifera" | "american";
  /**
   * HalfKilled is the temperature that kills half of the buds; 0 takes that of the stage and the group.
   */
  halfKilled_C: number;
}
/**
 * Crop is what vines can carry, fruit brings and hands do, shared by all options.
 */
export interface Crop {
  /**
   * Prunings is the weight of one-year wood cut off in winter per metre of row, as the vines of the site grow now: their vigour, whatever the form. The middle of the balanced range of one curtain, 0.5 to 1.0 (Kliewer & Dokoozlian 2005).
   */
  prunings_kg_per_m: number;
  /**
   * FirstNodes are the nodes that balanced pruning keeps for the first pound of prunings of a vine.
   */
  firstNodes: number;
  /**
   * MoreNodes are the nodes that it keeps for each further pound.
   */
  moreNodes: number;
  /**
   * Spread is how far a yield may lie off either way, as a share of it: the seasons and what is counted wrong.
   */
  spread: number;
  /**
   * Price is what a tonne of fruit brings, in the user's own money; 0 computes no income.
   */
  price_per_t: number;
  /**
   * SpurTime is the time to cut one spur.
   */
  spurTime_s: number;
  /**
   * CaneTime is the time to choose, cut and tie one cane.
   */
  caneTime_s: number;
  /**
   * ShootTime is the time to put one shoot in its place, or to take it out.
   */
  shootTime_s: number;
  /**
   * LeafTime is the time to pull all leaves of the fruit zone on one metre of one side.
   */
  leafTime_s: number;
}
/**
 * Weights are what matters to the reader.
 */
export interface Weights {
  /**
   * Heat is how much it matters that the hottest fruit stays cool.
   */
  heat: number;
  /**
   * Light is how much it matters that the fruit has the light that is wished.
   */
  light: number;
  /**
   * LightWish is whether more light on the fruit is better, or less.
   */
  lightWish: "more" | "less";
  /**
   * Frost is how much it matters that buds stay above the temperatures that kill them.
   */
  frost: number;
  /**
   * Crop is how much the weight of fruit matters.
   */
  crop: number;
  /**
   * Work is how much it matters that the work by hand is little.
   */
  work: number;
}
/**
 * Option is one way to plant, train and shade the vines of the site.
 */
export interface Option {
  /**
   * Name is what the user calls this option; empty takes the name of the form.
   */
  name: string;
  /**
   * Form is the key of the training form whose sizes are the defaults of all that follows.
   */
  form: string;
  rows: Rows;
  trellis: Trellis;
  training: Training;
  shoots: Shoots;
  leaves: Leaves;
  bunches: Bunches;
  shade: Shade;
  cost: Cost;
}
/**
 * Rows is the planting.
 */
export interface Rows {
  /**
   * Azimuth is the compass direction of the row line, clockwise from true north; 0 and 180 are the same row.
   */
  azimuth_deg: number;
  /**
   * RowSpacing is the distance between row lines.
   */
  rowSpacing_m: number;
  /**
   * VineSpacing is the distance between vines in the row.
   */
  vineSpacing_m: number;
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
  wires: Wire[];
  /**
   * PostSpacing is the distance between line posts.
   */
  postSpacing_m: number;
  /**
   * CrossWires is the distance between wires across the row that join the roof wires into a net; 0 for none.
   */
  crossWires_m: number;
  /**
   * AfternoonWire is the height of one more foliage wire on the afternoon side of the row, over which shoots lean out; 0 for none. On east-west rows that is the side that faces the equator.
   */
  afternoonWire_m: number;
  /**
   * AfternoonOut is how far from the row line it runs.
   */
  afternoonOut_m: number;
}
/**
 * Wire is one wire along the row.
 */
export interface Wire {
  /**
   * Height above the ground at the row line.
   */
  height_m: number;
  /**
   * Offset sideways from the row line, positive on the side that lies clockwise of the row azimuth (the east side of a north-south row).
   */
  offset_m: number;
  /**
   * Role is what the wire does: carry arms (fruiting); hold shoots that lie over it (foliage); in pairs, hold shoots upright between them, or below the arms those turned down (catch); hold the ends of bent canes (tie); or, side by side overhead, carry shoots spread over them (roof).
   */
  role: "fruiting" | "foliage" | "catch" | "tie" | "roof";
}
/**
 * Training is where the permanent wood goes.
 */
export interface Training {
  /**
   * ArmsPerVine is the number of arms of one vine, shared out over the fruiting wires.
   */
  armsPerVine: number;
  /**
   * ArmLayout is where the arms go: along their fruiting wires, or spread from the head to all sides.
   */
  armLayout: "along" | "spread";
  /**
   * ArmLength is the length of spread arms; those along a wire reach half way to the next vine.
   */
  armLength_m: number;
  /**
   * ArmRise is the inclination of spread arms above the horizontal; under roof wires they lie on the roof.
   */
  armRise_deg: number;
  /**
   * HeadHeight is the height at which the arms of a vine without fruiting wire leave the trunk.
   */
  headHeight_m: number;
  /**
   * Wood is what is left at pruning: spurs on cordons, or canes.
   */
  wood: "spurs" | "canes";
  /**
   * SpurSpacing is the distance between spurs along a cordon, and between canes that leave one.
   */
  spurSpacing_m: number;
  /**
   * CaneLayout is where canes go: they are the arms themselves (along), or leave a cordon and are arched over and tied to a tie wire below (arched), bent straight down to it (tied-down), or hang as they like (free).
   */
  caneLayout: "along" | "arched" | "tied-down" | "free";
  /**
   * CaneNodes is the number of nodes of a cane that leaves a cordon; it sets the length of the cane.
   */
  caneNodes: number;
  /**
   * BareBase is the part of a spread arm, or of a cane that leaves a cordon, that bears no shoots, from its base.
   */
  bareBase: number;
  /**
   * SingleArmVines is the share of vines that keep one arm only; the rest of their wire stays bare.
   */
  singleArmVines: number;
  /**
   * YoungVines is the share of vines whose arms have grown to half of their length.
   */
  youngVines: number;
  /**
   * MissingVines is the share of vines that are not there.
   */
  missingVines: number;
  /**
   * BlindNodes is the share of the places for shoots that stay without one.
   */
  blindNodes: number;
}
/**
 * Shoots is the growth of the season.
 */
export interface Shoots {
  /**
   * PerMetre counts shoots per metre of canopy (per metre of fruiting wire, or of the row where arms spread) on full-grown vines, before any are thinned.
   */
  perMetre: number;
  /**
   * Length is the mean length of a shoot, before any trimming.
   */
  length_m: number;
  /**
   * Internode is the mean distance between nodes.
   */
  internode_cm: number;
  /**
   * Habit is how the variety holds its shoots: 1 upright, 0 trailing.
   */
  habit: number;
  /**
   * Start is the inclination above the horizontal at which shoots leave the wood; negative points down.
   */
  start_deg: number;
  /**
   * Positioning is the share of shoots that the crew has put where the wires are meant to hold them.
   */
  positioning: number;
  /**
   * CombedDown is the share of shoots combed to hang down.
   */
  combedDown: number;
  /**
   * TurnedDown is the share of shoots turned down, on the lowest fruiting wires first; catch wires below the arms hold them.
   */
  turnedDown: number;
  /**
   * Thinned is the share of shoots taken out, evenly along the wood.
   */
  thinned: number;
  /**
   * TrimTop is the height at which shoots are hedged; 0 leaves them.
   */
  trimTop_m: number;
  /**
   * TrimSide is the distance from the row line at which both sides are hedged; 0 leaves them.
   */
  trimSide_m: number;
  /**
   * Skirt is the height at which hanging shoots are cut off below; 0 leaves them.
   */
  skirt_m: number;
}
/**
 * Leaves is the leaf area that the shoots carry.
 */
export interface Leaves {
  /**
   * Area is one-sided leaf area per metre of canopy (per metre of fruiting wire, or of the row where arms spread) on full-grown vines, before shoots are thinned or cut and leaves pulled; it is given, and leaf density follows.
   */
  area_m2_per_m: number;
  /**
   * Blade is the mean area of one full-grown primary leaf.
   */
  blade_cm2: number;
  /**
   * Laterals is the share of the leaf area that grows on laterals.
   */
  laterals: number;
  /**
   * Water is how the vines are watered: without want, short of water, or thirsty. It sets how far leaves open to cool themselves; it changes neither their area nor where they hang.
   */
  water: "watered" | "short" | "thirsty";
  /**
   * RemovedMorning is the share of leaves pulled on the morning side of the row.
   */
  removedMorning: number;
  /**
   * RemovedAfternoon is the share of leaves pulled on the afternoon side of the row.
   */
  removedAfternoon: number;
  /**
   * RemovedFrom is the height from which leaves are pulled where RemovedTo gives a band of its own.
   */
  removedFrom_m: number;
  /**
   * RemovedTo is the height up to which leaves are pulled; 0 pulls them in the fruit zone, from just above to just below the bunches.
   */
  removedTo_m: number;
  /**
   * RemovedOn is the date on which leaves are pulled, as year-month-day of any year: before it they hang, and in the week after it the fruit is newly uncovered. Without a date they were pulled long before.
   */
  removedOn: string;
}
/**
 * Bunches is the crop.
 */
export interface Bunches {
  /**
   * PerShoot is the mean number of bunches on a shoot.
   */
  perShoot: number;
  /**
   * Mass of one bunch.
   */
  mass_g: number;
}
/**
 * Shade is the nets, films and mist that keep sun and heat off.
 */
export interface Shade {
  /**
   * NetSides are the sides of the row whose fruit zone a net covers. On east-west rows the side that faces away from the equator counts as the morning side.
   */
  netSides: "none" | "morning" | "afternoon" | "both";
  /**
   * NetShade is the share of light that the threads of that net stop where it comes straight on: the shade factor.
   */
  netShade: number;
  /**
   * NetColour of that net sets how much of what its threads stop goes on as diffuse light.
   */
  netColour: "black" | "green" | "white" | "pearl";
  /**
   * NetFrom is the height of its lower edge where NetTo gives a band of its own.
   */
  netFrom_m: number;
  /**
   * NetTo is the height of its upper edge; 0 covers the fruit zone, from just above to just below the bunches.
   */
  netTo_m: number;
  /**
   * NetDistance is how far from the row line it hangs, or where the fruit reaches farther, against the fruit.
   */
  netDistance_m: number;
  /**
   * BirdNet is a net of thin thread and wide mesh that lies over each row.
   */
  birdNet: "none" | "draped";
  /**
   * OverheadShade is the shade factor of a net over all rows; 0 for none.
   */
  overheadShade: number;
  /**
   * OverheadColour is that of the net over all rows.
   */
  overheadColour: "black" | "green" | "white" | "pearl";
  /**
   * OverheadHeight is how high the net over all rows hangs. It must clear the wires; light and heat are the same for every height above the canopy.
   */
  overheadHeight_m: number;
  /**
   * Film is how much of fruit and leaves a sprayed particle film whitens.
   */
  film: "none" | "light" | "full";
  /**
   * MistRate is the water that misters spread over the ground area while they run; 0 for none.
   */
  mistRate_mmh: number;
  /**
   * MistAbove is the air temperature above which they run.
   */
  mistAbove_C: number;
  /**
   * MistFrom is the clock hour from which they may run.
   */
  mistFrom_h: number;
  /**
   * MistTo is the clock hour up to which they may run.
   */
  mistTo_h: number;
}
/**
 * Cost is what it costs.
 */
export interface Cost {
  /**
   * Year is what a hectare costs in a year, the trellis paid off over its life included, in the user's own money; 0 computes no income.
   */
  year_per_ha: number;
}
