/** The face of a housing as a picture of its cavities, to look at or to pick from. */
import { type KeyboardEvent, useRef, useState } from 'react';
import { useTranslation } from 'react-i18next';
import { cavityName, type Face } from '#contracts/cavities.ts';
import classes from './cavity-picture.module.css';
import { type Place, stepOnFace } from './step-on-face.ts';

interface Props {
  face: Face;
  chosen: readonly string[];
  /** Given, the cavities can be picked: by touch, or with the arrow keys and the space bar. */
  onChange?: (cavities: string[]) => void;
  label: string;
}

/** Distance of cavities in the picture's own units; where they are picked, on the screen at least as many px: 48 and a gap. */
const cell = 54;
const arrows: Record<string, Place> = {
  ArrowUp: { row: -1, column: 0 },
  ArrowDown: { row: 1, column: 0 },
  ArrowLeft: { row: 0, column: -1 },
  ArrowRight: { row: 0, column: 1 },
};

export const CavityPicture = ({ face, chosen, onChange, label }: Props) => {
  const { t } = useTranslation('failures');
  const picture = useRef<SVGSVGElement>(null);
  const missing = new Set(face.missingCavities);
  const places = Array.from({ length: face.rows * face.columns }, (_, index) => ({
    row: Math.floor(index / face.columns) + 1,
    column: (index % face.columns) + 1,
  })).filter(({ row, column }) => !missing.has(cavityName(row, column)));
  const [focus, setFocus] = useState(places[0]);
  const toggle = (name: string) =>
    onChange?.(chosen.includes(name) ? chosen.filter((it) => it !== name) : [...chosen, name]);

  const onKeyDown = (event: KeyboardEvent, place: Place) => {
    const name = cavityName(place.row, place.column);
    const step = arrows[event.key];
    if (step) {
      const next = stepOnFace(face, place, step);
      setFocus(next);
      picture.current?.querySelector<SVGGElement>(`[data-cavity="${cavityName(next.row, next.column)}"]`)?.focus();
    } else if (event.key === ' ' || event.key === 'Enter') toggle(name);
    else return;
    event.preventDefault();
  };

  const width = face.columns * cell;
  const height = face.rows * cell;
  const size = { width: `max(100%, ${onChange ? width : 0}px)`, maxWidth: width * 1.6 };
  return (
    <div className={classes.frame}>
      <svg
        ref={picture}
        viewBox={`-4 -4 ${width + 8} ${height + 8}`}
        style={onChange ? size : { width: '100%', maxWidth: width }}
        className={classes.face}
        role={onChange ? 'group' : 'img'}
        aria-label={onChange ? label : t('cavity.picture', { label, cavities: chosen.join(', ') || '–' })}
      >
        <rect x={-3} y={-3} width={width + 6} height={height + 6} rx={8} className={classes.housing} />
        {places.map((place) => {
          const name = cavityName(place.row, place.column);
          const marked = chosen.includes(name);
          const pick = onChange && {
            role: 'checkbox',
            'aria-checked': marked,
            'aria-label': name,
            tabIndex: focus?.row === place.row && focus.column === place.column ? 0 : -1,
            onClick: () => toggle(name),
            onFocus: () => setFocus(place),
            onKeyDown: (event: KeyboardEvent) => onKeyDown(event, place),
          };
          return (
            <g
              key={name}
              data-cavity={name}
              data-marked={marked || undefined}
              transform={`translate(${(place.column - 1) * cell} ${(place.row - 1) * cell})`}
              className={onChange ? classes.pickable : undefined}
              {...pick}
            >
              <rect x={3} y={3} width={cell - 6} height={cell - 6} rx={5} className={classes.cavity} />
              <text x={cell / 2} y={cell / 2} className={classes.name}>
                {name}
              </text>
              {marked && (
                <path d={`M8 8 L${cell - 8} ${cell - 8} M${cell - 8} 8 L8 ${cell - 8}`} className={classes.cross} />
              )}
            </g>
          );
        })}
      </svg>
      <p className={classes.side}>{t('cavity.side')}</p>
    </div>
  );
};
