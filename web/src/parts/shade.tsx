/** Nets, film, mist and a wire for shade of an option: what is not hung, sprayed or run asks for nothing more. */

import { effectiveNumber, effectiveText, type Path, pointer } from "../document.ts";
import { faultText } from "../sentences.ts";
import { scenario, units } from "../store.ts";
import { ChoiceField } from "./choice.tsx";
import { Group, Rows } from "./group.tsx";

export function ShadeGroup({ base }: { base: Path }) {
  const shade: Path = [...base, "shade"];
  const chosen = (field: string) => effectiveText(scenario.value, [...shade, field]) !== "none";
  const used = (field: string) => effectiveNumber(scenario.value, [...shade, field]) > 0;
  const sideNet = chosen("netSides");
  const birdNet = chosen("birdNet");
  const roof = used("overheadShade");
  const film = chosen("film");
  const wire = effectiveNumber(scenario.value, [...base, "trellis", "afternoonWire_m"]) > 0;
  const mist = used("mistRate_mmh");
  return (
    <Group title="group.shade">
      <ChoiceField path={[...shade, "netSides"]} words="netSides" />
      {sideNet && (
        <>
          <Rows base={shade} rows={[["netShade", "share"]]} />
          <ChoiceField path={[...shade, "netColour"]} words="cloth" />
          <Rows base={shade} rows={[["netDistance_m"], ["netFrom_m"], ["netTo_m"]]} />
        </>
      )}
      <ChoiceField path={[...shade, "birdNet"]} words="birdNet" />
      <Rows base={shade} rows={[["overheadShade", "share"]]} />
      {roof && (
        <>
          <ChoiceField path={[...shade, "overheadColour"]} words="cloth" />
          <Rows base={shade} rows={[["overheadHeight_m"]]} />
        </>
      )}
      {(sideNet || birdNet || roof) && <Caution base={base} code="notice.nets" />}
      <ChoiceField path={[...shade, "film"]} words="film" />
      {film && <Caution base={base} code="notice.film" />}
      <Rows base={[...base, "trellis"]} rows={wire ? [["afternoonWire_m"], ["afternoonOut_m"]] : [["afternoonWire_m"]]} />
      <Rows base={shade} rows={[["mistRate_mmh"]]} />
      {mist && (
        <>
          <Rows base={shade} rows={[["mistAbove_C"], ["mistFrom_h"], ["mistTo_h"]]} />
          <Caution base={base} code="notice.mist" />
        </>
      )}
    </Group>
  );
}

/** What a choice may do to people, posts and fruit, where it is made. */
function Caution({ base, code }: { base: Path; code: string }) {
  return (
    <p class="small" role="note">
      {faultText({ code, path: pointer(base), values: {} }, units.value)}
    </p>
  );
}
