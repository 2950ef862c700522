/**
 * Stable marks for browser tests, written as data-testid. L is a letter A–D, S is left or right as
 * in the results (the right side of a north–south row is its east side).
 *
 *   calculation            data-generation of the shown result, data-pending "true" or "false",
 *                          data-phase of the engine
 *   hour-slider            input range, value 0…288 in steps of 5 minutes; Page keys move one hour,
 *                          Home and End go to sunrise and sunset (to the ends on a polar day)
 *   ribbon                 the sun, the air and the hour over the day
 *   hour                   the chosen clock hour as a typed box, data-value in hours
 *   play, undo, redo, units-metric, units-us, language, theme, projector, add-option, site
 *   comparison             the sentences of comparison (aria-live)
 *   option-L               the column of an option
 *   option-L-form          select of the training form
 *   option-L-azimuth       slider of the row azimuth; option-L-azimuth-box its typed box
 *   option-L-edit, option-L-copy, option-L-what-if, option-L-remove, option-L-left, option-L-right
 *   option-L-likeness      from which option it came and what differs, only while that is little
 *   option-L-section       the cross-section in the sheet; option-L-add-wire, option-L-wire-N-height, -offset, -remove
 *                          its wires, N from 1
 *   option-L-pane          the focusable element over the 3D pane
 *   ways                   choice of the way of looking; way-natural, way-light, way-heat, way-slice, way-outlook
 *   painted                says that the pictures are painted without WebGL, only while they are
 *   option-L-from          select of places to look from; option-L-read reads a bunch; option-L-link links the looks
 *   option-L-tools         unfolds the tools of a narrow pane; option-L-closer one of them
 *   option-L-bunch         the day of the bunch that is read; option-L-bunch-next goes to the next
 *   option-L-verdict       the sentence
 *   option-L-hottest, -overBurn, -overHot, -overWatch      the day of the hottest fruit on the worse side
 *   option-L-hottest-range, …                              data-low and data-high of its range, once drawn
 *   option-L-unsure        where the model is less sure of it, only while it is
 *   option-L-notices       what a grower would find wrong with the design, only while something is
 *   canopy                 the details element of the measures of the canopies
 *   option-L-canopy-leafArea, -leafAreaHa, -exposed, -layers, -gaps, -exterior, -heightToGap, -intercepted,
 *                          -leafToFruit, -fruitHeight, -top, -width      the measures
 *   option-L-hottest-why, …                                opens how the number comes about
 *   option-L-S-why                                         the same of a side at the chosen hour
 *   explanation            the open explanation
 *   comparison-notes       heat for people, as long as any fruit gets hot
 *   odds                   what the draws of uncertain inputs say; data-draws lived through so far
 *   option-L-S-lit, -mean, -hottest                        at the chosen hour
 *   option-L-S-dayHottest, -overWatch, -overHot, -overBurn the hottest fruit over the day, with -mean behind it the mean
 *                          fruit, and -atRisk its share
 *   faults                 what is wrong with the document, only while something is
 *   restart                starts the engine again after a crash, restart-view the pictures
 *   other-tabs             says that another tab is open
 *   sheet                  the open sheet
 *   facts, note            place, date, heat and rows in the head; where the day comes from
 *   weather-file           input that takes a weather file; weather-status says what is open,
 *                          weather-summary its place and days, weather-notices what looks odd,
 *                          weather-faults why a file or day was refused
 *   weather-preview        one clear day of the open file; weather-clock says that its clock fits the sun
 *   mapping                the form of a table to be mapped; mapping-column-N and mapping-unit-N say what column N
 *                          holds, mapping-FIELD how it is read, mapping-read reads it, mapping-leave leaves it
 *   normals                the form of monthly normals; normals-N-KEY a box of month N, normals-make makes days
 *   weather-month, weather-day, weather-hottest      choices among the days of the open file
 *   measured-day           the measured day in words, day-notices what was filled in it,
 *                          measured-back goes back to the design day
 *   compare                select of the option that the others are compared with
 *   directions             the details element of row directions; directions-over and -limit choose days and
 *                          limit, directions-state has data-done "true" or "false", directions-words the
 *                          sentences, directions-table the numbers; directions-state-stop and -run
 *   season                 the details element of the season; season-from, -to and -all choose the days, season-state as
 *                          above, season-waves the heat waves, season-L-S a calendar with data-days known so far and
 *                          its sums -overHot, -heat and -risk, season-table the numbers
 *   keep, share, report    the tools that keep, hand on and print
 *   save-file, open-file   the scenario as a file: a button and an input
 *   save-name, save-named  under which name to keep it in this browser; named, earlier are what it holds
 *   link, embed-text       the address of the scenario; the text that puts it into another page
 *   save-table, save-numbers, save-pictures      the day as CSV, JSON and PNG
 *   keep-notices           what there is to tell of a document that came in; not-kept while the browser
 *                          keeps nothing; update and use-update while a newer page waits
 *   table                  the details element of the hourly table
 *   day-charts             the details element of the charts of the day; chart-KEY one of them, chart-KEY-table its numbers;
 *                          KEY is temperature, light, lit, flows
 *   weigh                  the table of the whole decision; weigh-KEY the slider of a weight, weigh-KEY-L the number
 *                          of an option with data-low and data-high; KEY is heat, light, frost, crop, work, water, colour
 *   weigh-order            the order by the reader's weights; night, crop the parts below it
 *   four-arms-NODES-L      adds option L with four arms, NODES is same (in all) or twice (as many on each arm)
 *   lessons                opens the list of lessons; lesson-open-KEY opens one of them
 *   lesson                 the open lesson: data-lesson its key, data-stage the stage, data-seen "true" once the runs are in
 *   lesson-guess-KEY       a guess; lesson-next, lesson-back, lesson-run, lesson-leave, lesson-print go on from a stage
 *   lesson-value-NAME      a number of the lesson; lesson-outcome has data-found, the guess that the run bears out
 *   lesson-try-KEY, lesson-notes, lesson-take-over, lesson-anew      what the last stage offers
 *
 * Every number carries its full value in data-value, as String(number).
 */

import { letter } from "./document.ts";

/** The mark of a part of an option's column. */
export function optionHook(option: number, part?: string): string {
  return part ? `option-${letter(option)}-${part}` : `option-${letter(option)}`;
}

/** The mark of a row of the decision, or of one option in it. */
export function weighHook(key: string, option?: number): string {
  return option === undefined ? `weigh-${key}` : `weigh-${key}-${letter(option)}`;
}

/** The mark of a part of a lesson: a guess, a number, something to try out, or its entry in the list. */
export function lessonHook(part: "guess" | "value" | "try" | "open", key: string): string {
  return `lesson-${part}-${key}`;
}
