/** The texts that page and command line share, and the names of training forms, in the language of the page. */

import english from "../../sim/words/en.json" with { type: "json" };
import spanish from "../../sim/words/es.json" with { type: "json" };
import { type Form, formCatalogue } from "./document.ts";
import { language } from "./language.ts";
import spanishForms from "./text/forms.es.json" with { type: "json" };

const catalogues: Record<string, Record<string, string>> = { en: english, es: spanish };
const forms: Record<string, Record<string, string>> = { es: spanishForms };

/** The text of a code; undefined where there is none. */
export function sharedTemplate(code: string): string | undefined {
  return catalogues[language.value]?.[code];
}

/** A word of the engine, such as the compass point "west", in the language of the page; itself where it is unknown. */
export function sharedWord(word: string): string {
  return sharedTemplate(`word.${word}`) ?? word;
}

/** What a training form is called. */
export function formName(form: Form): string {
  return forms[language.value]?.[form.key] ?? form.name;
}

/** A name that the engine gives an option: that of its form in the language of the page, or its own as it is. */
export function optionWord(name: string): string {
  const form = formCatalogue.find((candidate) => candidate.name === name);
  return form ? formName(form) : name;
}
