/** A tint by slider and by typing. The slider follows the finger; one drag is one step of undo. */
import { useEffect, useId, useRef } from "react";
import { NumberEntry } from "./NumberEntry.tsx";

interface Props {
  readonly label: string;
  readonly massFraction: number;
  /** The end of the slider; by typing, up to `largestFraction`. */
  readonly sliderEndFraction: number;
  readonly largestFraction: number;
  readonly stepFraction: number;
  /** Called all through a drag; equal gestures in a row belong to one step of undo. */
  readonly onChange: (massFraction: number, gesture: string) => void;
  /** The drag is over. */
  readonly onChangeEnd?: (massFraction: number) => void;
}

/** Percent is only how it is shown; rounding to 9 digits takes off what multiplying by 0.01 adds. */
const fractionFromPercent = (percent: number) => Number((percent / 100).toFixed(9));
const percentFromFraction = (fraction: number) => Number((fraction * 100).toFixed(7));

export function TintSlider(props: Props) {
  const { label, massFraction, sliderEndFraction, largestFraction, stepFraction, onChange, onChangeEnd } =
    props;
  const id = useId();
  const slider = useRef<HTMLInputElement>(null);
  const gestureCount = useRef(0);
  const ended = useRef(onChangeEnd);
  useEffect(() => {
    ended.current = onChangeEnd;
  });

  useEffect(() => {
    const element = slider.current;
    if (element === null) return;
    // The browser's own `change` comes once, when the slider is let go; React's onChange is its `input`.
    const onEnd = () => ended.current?.(fractionFromPercent(Number(element.value)));
    element.addEventListener("change", onEnd);
    return () => element.removeEventListener("change", onEnd);
  }, []);

  const newGesture = () => {
    gestureCount.current += 1;
  };
  const shownEnd = Math.min(Math.max(sliderEndFraction, massFraction), largestFraction);
  return (
    <div className="tint">
      <label className="tint__label entry__label" htmlFor={id}>
        {label}
      </label>
      <input
        ref={slider}
        id={id}
        type="range"
        min={0}
        max={percentFromFraction(shownEnd)}
        step={percentFromFraction(stepFraction)}
        value={percentFromFraction(massFraction)}
        aria-valuetext={`${percentFromFraction(massFraction)} %`}
        onPointerDown={newGesture}
        onBlur={newGesture}
        onChange={(event) =>
          onChange(fractionFromPercent(Number(event.target.value)), `${id}-${gestureCount.current}`)
        }
      />
      <NumberEntry
        label={`${label}, typed`}
        labelUnseen
        value={percentFromFraction(massFraction)}
        min={0}
        max={percentFromFraction(largestFraction)}
        unit="%"
        onCommit={(percent) => {
          newGesture();
          onChange(fractionFromPercent(percent), `${id}-${gestureCount.current}`);
          onChangeEnd?.(fractionFromPercent(percent));
        }}
      />
    </div>
  );
}
