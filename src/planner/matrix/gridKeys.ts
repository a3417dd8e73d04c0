/** Where a key leads in the grid: the keys of the WAI-ARIA grid pattern for data cells. */

export interface GridPosition {
  readonly row: number;
  readonly column: number;
}

export interface GridSize {
  readonly rowCount: number;
  readonly columnCount: number;
  /** Rows that fit on the screen: the step of Page Up and Page Down. */
  readonly pageRowCount: number;
}

/** The cell that the key leads to from `from`; null for a key that moves nothing. Never outside the grid. */
export function positionAfterKey(
  key: string,
  isControl: boolean,
  from: GridPosition,
  { rowCount, columnCount, pageRowCount }: GridSize,
): GridPosition | null {
  const at = (row: number, column: number): GridPosition => ({
    row: Math.max(0, Math.min(rowCount - 1, row)),
    column: Math.max(0, Math.min(columnCount - 1, column)),
  });
  const { row, column } = from;
  switch (key) {
    case "ArrowUp":
      return isControl ? null : at(row - 1, column);
    case "ArrowDown":
      return isControl ? null : at(row + 1, column);
    case "ArrowLeft":
      return isControl ? null : at(row, column - 1);
    case "ArrowRight":
      return isControl ? null : at(row, column + 1);
    case "Home":
      return isControl ? at(0, 0) : at(row, 0);
    case "End":
      return isControl ? at(rowCount - 1, columnCount - 1) : at(row, columnCount - 1);
    case "PageUp":
      return isControl ? null : at(row - Math.max(1, pageRowCount), column);
    case "PageDown":
      return isControl ? null : at(row + Math.max(1, pageRowCount), column);
    default:
      return null;
  }
}
