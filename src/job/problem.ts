/** What is wrong with an input, as a code: the planner owns the sentences. */
export interface Problem {
  readonly code: string;
  /** Path of the field, as a printer of JSON would write it: recipe[2].massFraction. */
  readonly where: string;
  /** A few words of data: an id, a limit, the wanted type. */
  readonly detail?: string;
  /** Figures and names that a sentence about it needs; fractions as fractions. */
  readonly values?: Readonly<Record<string, string | number>>;
}
