/** The few signs of the page, drawn in the colour of the text. */

import type { ComponentChildren } from "preact";

function Icon({ children }: { children: ComponentChildren }) {
  return (
    <svg class="icon" viewBox="0 0 20 20" width="20" height="20" aria-hidden="true" focusable="false">
      {children}
    </svg>
  );
}

export const UndoIcon = () => (
  <Icon>
    <path d="M7 4 3.5 7.5 7 11M4 7.5h7.5a4.5 4.5 0 0 1 0 9H8" />
  </Icon>
);

export const RedoIcon = () => (
  <Icon>
    <path d="M13 4l3.5 3.5L13 11M16 7.5H8.5a4.5 4.5 0 0 0 0 9H12" />
  </Icon>
);

export const PlayIcon = () => (
  <Icon>
    <path class="solid" d="M6 3.5v13l10-6.5z" />
  </Icon>
);

export const PauseIcon = () => (
  <Icon>
    <path class="solid" d="M5.5 4h3v12h-3zM11.5 4h3v12h-3z" />
  </Icon>
);

export const TurnLeftIcon = () => (
  <Icon>
    <path d="M12.5 4.5 7 10l5.5 5.5" />
  </Icon>
);

export const TurnRightIcon = () => (
  <Icon>
    <path d="M7.5 4.5 13 10l-5.5 5.5" />
  </Icon>
);

export const UpIcon = () => (
  <Icon>
    <path d="M4.5 12.5 10 7l5.5 5.5" />
  </Icon>
);

export const DownIcon = () => (
  <Icon>
    <path d="M4.5 7.5 10 13l5.5-5.5" />
  </Icon>
);

export const CloserIcon = () => (
  <Icon>
    <path d="M10 4v12M4 10h12" />
  </Icon>
);

export const FartherIcon = () => (
  <Icon>
    <path d="M4 10h12" />
  </Icon>
);

export const ResetIcon = () => (
  <Icon>
    <path d="M3.5 10 10 4l6.5 6M5.5 9v7h9V9" />
  </Icon>
);

export const LinkIcon = () => (
  <Icon>
    <path d="M8.5 6.5H6a3.5 3.5 0 0 0 0 7h2.5M11.5 6.5H14a3.5 3.5 0 0 1 0 7h-2.5M7 10h6" />
  </Icon>
);

export const BunchIcon = () => (
  <Icon>
    <path d="M10 3v3M6.5 8.5h.01M10 8.5h.01M13.5 8.5h.01M8.3 12h.01M11.8 12h.01M10 15.5h.01" stroke-width="3.2" stroke-linecap="round" />
  </Icon>
);

export const EyeIcon = () => (
  <Icon>
    <path d="M2 10c2.2-3.6 4.9-5.4 8-5.4s5.8 1.8 8 5.4c-2.2 3.6-4.9 5.4-8 5.4S4.2 13.6 2 10z" />
    <circle class="solid" cx="10" cy="10" r="2.5" />
  </Icon>
);

/** The marker of an option: a different shape and dash for each, never a colour alone. */
export function Marker({ option }: { option: number }) {
  const shapes = [
    <circle cx="10" cy="10" r="6.5" />,
    <path d="M4 4h12v12H4z" />,
    <path d="M10 3.5 17 16H3z" />,
    <path d="M10 2.5 17.5 10 10 17.5 2.5 10z" />,
  ];
  return (
    <svg class={`marker marker-${option}`} viewBox="0 0 20 20" width="16" height="16" aria-hidden="true">
      {shapes[option]}
    </svg>
  );
}

export const ToLeftIcon = () => (
  <Icon>
    <path d="M16 10H4M8.5 5.5 4 10l4.5 4.5" />
  </Icon>
);

export const ToRightIcon = () => (
  <Icon>
    <path d="M4 10h12M11.5 5.5 16 10l-4.5 4.5" />
  </Icon>
);

export const ProjectorIcon = () => (
  <Icon>
    <path d="M2 3.5h16M3.5 3.5v9.5h13V3.5M10 13v1.5M6.5 17.5l3.5-3 3.5 3" />
  </Icon>
);

export const ThemeIcon = () => (
  <Icon>
    <circle cx="10" cy="10" r="6.5" />
    <path class="solid" d="M10 3.5a6.5 6.5 0 0 1 0 13z" />
  </Icon>
);
