import type { ReactNode } from 'react';
import classes from './record.module.css';

interface Props<Word extends string> {
  name: string;
  legend: string;
  options: readonly { value: Word; label: ReactNode }[];
  value: Word | null;
  onChange: (value: Word) => void;
}

/** One of a few, as buttons that a thumb in a glove finds; radio buttons underneath. */
export const ChoiceButtons = <Word extends string>({ name, legend, options, value, onChange }: Props<Word>) => (
  <fieldset className={classes.choices}>
    <legend>{legend}</legend>
    <div>
      {options.map((option) => (
        <label key={option.value} className={classes.choice}>
          <input
            type="radio"
            name={name}
            value={option.value}
            checked={value === option.value}
            onChange={() => onChange(option.value)}
          />
          <span>{option.label}</span>
        </label>
      ))}
    </div>
  </fieldset>
);
