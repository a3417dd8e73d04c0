/** Says of a draft that it is one, and what it lacks. */
export function NotSavedYet({ sentence }: { readonly sentence: string }) {
  return (
    <p className="not-saved" role="status">
      <strong>Not saved yet:</strong> {sentence}
    </p>
  );
}
