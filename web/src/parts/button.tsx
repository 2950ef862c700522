import type { ComponentChildren } from "preact";

interface ButtonProps {
  /** The visible text; around a sign, the accessible name and tip. */
  label: string;
  /** The accessible name where the visible text alone says too little. */
  spoken?: string;
  onPress: () => void;
  disabled?: boolean;
  pressed?: boolean;
  expanded?: boolean;
  hook?: string;
  class?: string;
  shortcut?: string;
  children?: ComponentChildren;
}

export function Button({ label, spoken, onPress, disabled, pressed, expanded, hook, class: kind, shortcut, children }: ButtonProps) {
  return (
    <button
      type="button"
      class={`button ${children ? "with-sign" : ""} ${kind ?? ""}`}
      onClick={onPress}
      disabled={disabled ?? false}
      aria-pressed={pressed}
      aria-expanded={expanded}
      aria-label={children ? label : spoken}
      aria-keyshortcuts={shortcut}
      title={children ? label : undefined}
      data-testid={hook}
    >
      {children ?? label}
    </button>
  );
}
