/** What is odd about a record while it is typed, read out as it changes; nothing where nothing is. */
import { useMemo } from "react";
import type { Viewing } from "../../core/colorimetry/viewing.ts";
import { benchChecks } from "../../job/benchChecks.ts";
import type { Documents } from "../../job/documents.ts";
import type { BenchForm } from "../../job/recordBook/benchForm.ts";
import { draftOfForm } from "../../job/recordBook/benchPrint.ts";
import { Notice } from "../controls/Notice.tsx";
import { benchSentence } from "../words/benchSentences.ts";

interface Props {
  readonly documents: Documents;
  readonly form: BenchForm;
  /** The light and observer that readings are expected under. */
  readonly viewing: Viewing;
  /** Code of what is said elsewhere. */
  readonly saidElsewhere?: string;
}

export function OddReadings({ documents, form, viewing, saidElsewhere }: Props) {
  const { library, job } = documents;
  const odd = useMemo(
    () =>
      benchChecks(draftOfForm(form), {
        library,
        viewing,
        supersedesId: form.supersedesId,
        otherRecipes: job.mixes.map(({ recipe }) => recipe),
      }).filter(({ code }) => code !== saidElsewhere),
    [form, library, viewing, job.mixes, saidElsewhere],
  );
  if (odd.length === 0) return null;
  return (
    <Notice kind="caution" announce>
      <ul className="tests__odd">
        {odd.map((problem) => (
          <li key={`${problem.code} ${problem.where}`}>{benchSentence(problem)}</li>
        ))}
      </ul>
    </Notice>
  );
}
