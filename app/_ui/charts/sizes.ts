/** Pixels on the screen; print scales the whole drawing. */
export const PANEL_HEIGHT = 250;
export const MARGIN = { top: 14, right: 14, bottom: 4, left: 0 } as const;
/** Above the first panel, where the marker is named. */
export const MARKER_ROOM = 24;
export const X_TICKS = 7;
export const AXIS_WIDTH = 56;
export const LABEL_LINE = 19;
