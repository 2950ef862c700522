import { units } from "../store.ts";
import { show, showDifference, type Shown } from "../units.ts";

interface QuantityProps {
  value: number | undefined;
  unit: string;
  hook?: string;
  digits?: number;
  difference?: boolean;
  /** Whether it follows from the scenario: it is muted while it is behind, unless it is nearly there. */
  follows?: boolean;
  /** Nearly, before it is known. */
  nearly?: boolean;
}

/** A number with its unit; the full value stands in data-value. Without a value it is a dash. */
export function Quantity({ value, unit, hook, digits, difference, follows, nearly }: QuantityProps) {
  if (value === undefined || Number.isNaN(value)) {
    return (
      <span class="quantity empty" data-testid={hook}>
        –
      </span>
    );
  }
  const shown: Shown = (difference ? showDifference : show)(value, unit, units.value, digits);
  return (
    <span class={`quantity ${follows && !nearly ? "follows" : ""}`} data-testid={hook} data-value={String(value)}>
      <span class="value">
        {nearly && "≈\u202f"}
        {shown.value}
      </span>
      <span class="unit">{shown.unit}</span>
    </span>
  );
}
