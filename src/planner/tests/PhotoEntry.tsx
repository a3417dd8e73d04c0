/** A photo to recognise the print by: made small enough to travel with the job, and never measured from. */
import { useId, useState } from "react";
import type { TestPrint } from "../../job/recordDocument.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { smallPhoto } from "./smallPhoto.ts";

interface Props {
  readonly photo: TestPrint["photo"];
  readonly onChange: (photo: TestPrint["photo"]) => void;
}

export function PhotoEntry({ photo, onChange }: Props) {
  const id = useId();
  const [problem, setProblem] = useState<string | null>(null);
  const take = async (file: File | undefined) => {
    if (file === undefined) return;
    const small = await smallPhoto(file);
    setProblem(small === null ? "This file could not be read as a photo." : null);
    if (small !== null) onChange(small);
  };
  return (
    <div className="entry">
      <label className="entry__label" htmlFor={id}>
        Photo, if you like
      </label>
      <input
        id={id}
        className="entry__field"
        type="file"
        accept="image/*"
        aria-describedby={`${id}-hint`}
        onChange={(event) => void take(event.target.files?.[0])}
      />
      <p id={`${id}-hint`} className="entry__hint">
        Not for measurement: a camera's colours are its own.
      </p>
      {problem !== null && (
        <p className="entry__problem" role="alert">
          {problem}
        </p>
      )}
      {photo !== null && (
        <figure className="tests__photo">
          <img src={photo.dataUrl} alt={`The print, as photographed: ${photo.name}`} />
          <figcaption>{photo.name}, not for measurement</figcaption>
          <ActionButton weight="plain" onClick={() => onChange(null)}>
            Leave the photo out
          </ActionButton>
        </figure>
      )}
    </div>
  );
}
