import { Input } from '@mantine/core';
import { type KeyboardEvent, useId, useRef, useState } from 'react';
import { useTranslation } from 'react-i18next';
import { gridCavities } from '#contracts/cavities.ts';
import classes from '../master-data.module.css';
import { useLabels } from '../use-labels.ts';
import type { FieldProps } from './field-input.tsx';

const steps = (columns: number): Record<string, number> => ({
  ArrowRight: 1,
  ArrowLeft: -1,
  ArrowDown: columns,
  ArrowUp: -columns,
});

/** The face of the housing seen from the wire side: what is pressed is not there. Arrow keys move, the space bar presses. */
export const FaceField = ({ field, form, disabled }: FieldProps) => {
  const { t } = useTranslation('master-data');
  const label = useLabels();
  const id = useId();
  const frame = useRef<HTMLFieldSetElement>(null);
  const [focus, setFocus] = useState(0);
  const rows = Number(form.values.rows);
  const columns = Number(form.values.columns);
  const drawable =
    Number.isInteger(rows) && Number.isInteger(columns) && rows > 0 && columns > 0 && rows <= 40 && columns <= 60;
  const cavities = drawable ? gridCavities({ rows, columns }) : [];
  const missing = (form.values[field.name] as string[]).filter((cavity) => cavities.includes(cavity));
  const toggle = (cavity: string) =>
    form.setFieldValue(
      field.name,
      missing.includes(cavity) ? missing.filter((it) => it !== cavity) : [...missing, cavity],
    );
  const current = Math.min(focus, cavities.length - 1);

  const onKeyDown = (event: KeyboardEvent) => {
    const step = steps(columns)[event.key];
    const next = current + (step ?? 0);
    if (step === undefined || next < 0 || next >= cavities.length) return;
    event.preventDefault();
    setFocus(next);
    frame.current?.querySelectorAll<HTMLElement>('button')[next]?.focus();
  };

  return (
    <Input.Wrapper
      label={label(field.name)}
      labelElement="div"
      labelProps={{ id }}
      description={t('faceHelp', { count: cavities.length - missing.length })}
      error={form.errors[field.name]}
    >
      <div className={classes.faceFrame} hidden={!drawable}>
        <fieldset
          ref={frame}
          aria-labelledby={id}
          className={classes.face}
          style={{ gridTemplateColumns: `repeat(${columns}, auto)` }}
          onKeyDown={onKeyDown}
        >
          {cavities.map((cavity, place) => (
            <button
              key={cavity}
              type="button"
              aria-pressed={missing.includes(cavity)}
              tabIndex={place === current ? 0 : -1}
              className={classes.cavity}
              disabled={disabled}
              onFocus={() => setFocus(place)}
              onClick={() => toggle(cavity)}
            >
              {cavity}
            </button>
          ))}
        </fieldset>
      </div>
    </Input.Wrapper>
  );
};
