import { Button, Textarea } from '@mantine/core';
import { useMutation, useQuery } from '@tanstack/react-query';
import { useTranslation } from 'react-i18next';
import { uuidv7 } from 'uuidv7';
import type { Plant } from '#contracts/master-data.ts';
import { dispositions, effects, lockStates } from '#contracts/taxonomy.ts';
import { OfferedLessons } from '#web/features/lessons/offered-lessons.tsx';
import type { Caution } from '#web/ui/cautions.tsx';
import { useTerms } from '#web/ui/language.ts';
import { usePerson } from '#web/ui/person.ts';
import { ProblemNote } from '#web/ui/problem.tsx';
import { housingQuery } from '../plant-data.ts';
import { ChoiceButtons } from './choice-buttons.tsx';
import type { Recorded } from './done.tsx';
import { type Draft, reportOf, withCavities } from './draft.ts';
import { HousingStep } from './housing-step.tsx';
import { MoreStep } from './more-step.tsx';
import { keepWaiting } from './outbox/store.ts';
import { sendNow } from './outbox/use-outbox.ts';
import { PhotoStep } from './photo-step.tsx';
import { usedLast, usePlace } from './place.ts';
import { PlaceStep } from './place-step.tsx';
import { QuantityStepper } from './quantity-stepper.tsx';
import classes from './record.module.css';

interface Props {
  plants: readonly Plant[];
  draft: Draft;
  onChange: (patch: Partial<Draft>) => void;
  onRecorded: (recorded: Recorded) => Promise<void>;
}

const optionsOf = <Word extends string>(words: readonly Word[], labels: Readonly<Record<Word, string>>) =>
  words.map((value) => ({ value, label: labels[value] }));

export const RecordForm = ({ plants, draft, onChange, onRecorded }: Props) => {
  const { t } = useTranslation('failures');
  const terms = useTerms();
  const person = usePerson();
  const [stored, changePlace] = usePlace();
  const only = plants.length === 1 ? plants[0] : undefined;
  const place = { ...stored, plantId: only?.id ?? stored.plantId };
  const plant = plants.find(({ id }) => id === place.plantId);
  const housing = useQuery({ ...housingQuery(draft.housingId ?? ''), enabled: draft.housingId !== null }).data;

  const record = useMutation({
    mutationFn: async (at: Date) => {
      if (!plant) return;
      const id = uuidv7();
      const cautions: Caution[] = [
        ...(housing?.safetyRelevant ? (['safety'] as const) : []),
        ...(draft.effect === 'heating' ? (['heating'] as const) : []),
      ];
      await keepWaiting({
        id,
        personId: person.id,
        recordedAt: at.toISOString(),
        label: [plant.code, housing?.code, draft.cavities.join(', ')].filter(Boolean).join(' · '),
        body: reportOf(id, place, draft, plant, housing, at),
        draft: { ...draft, photos: [] },
        photos: draft.photos,
        number: null,
        refusal: null,
      });
      changePlace({ plantId: plant.id, recentHousings: usedLast(place.recentHousings, draft.housingId) });
      await onRecorded({ id, cautions });
      void sendNow(person.id);
    },
  });
  const placeKnown = plant !== undefined && place.settled;
  const wrongInspected = draft.quantityInspected !== null && draft.quantityInspected < draft.quantityFound;

  return (
    <form
      className={classes.form}
      onSubmit={(event) => {
        event.preventDefault();
        record.mutate(new Date());
      }}
    >
      <PlaceStep place={place} plants={plants} onChange={changePlace} />
      <div className={classes.step}>
        <HousingStep
          recent={place.recentHousings}
          housing={draft.housingId === null ? undefined : housing}
          cavities={draft.cavities}
          onHousing={(housingId) => onChange({ housingId, cavities: [] })}
          onCavities={(cavities) => onChange(withCavities(draft, cavities))}
        />
      </div>
      <OfferedLessons
        housingId={draft.housingId}
        terminalId={draft.terminalId ?? null}
        effect={draft.effect ?? null}
        text={draft.note}
      />
      <div className={classes.columns}>
        <div className={classes.step}>
          <ChoiceButtons
            name="effect"
            legend={t('record.effect')}
            options={optionsOf(effects, terms.effect)}
            value={draft.effect ?? null}
            onChange={(effect) => onChange({ effect })}
          />
          <QuantityStepper
            label={t('record.quantity')}
            value={draft.quantityFound}
            onChange={(quantityFound) => onChange({ quantityFound })}
          />
          <PhotoStep photos={draft.photos} onChange={(photos) => onChange({ photos })} />
        </div>
        <div className={classes.step}>
          <ChoiceButtons
            name="disposition"
            legend={t('record.disposition')}
            options={optionsOf(dispositions, terms.disposition)}
            value={draft.disposition}
            onChange={(disposition) => onChange({ disposition })}
          />
          <ChoiceButtons
            name="lock"
            legend={t('record.lock')}
            options={optionsOf(lockStates, terms.lockState)}
            value={draft.lockState}
            onChange={(lockState) => onChange({ lockState })}
          />
          <Textarea
            size="lg"
            label={t('record.note')}
            autosize
            minRows={2}
            maxLength={10_000}
            value={draft.note ?? ''}
            onChange={(event) => onChange({ note: event.currentTarget.value || null })}
          />
        </div>
      </div>
      {plant && <MoreStep draft={draft} plantId={plant.id} onChange={onChange} />}
      {record.error && <ProblemNote error={record.error} />}
      <div className={classes.send}>
        {!placeKnown && <p className={classes.hint}>{t('record.placeFirst')}</p>}
        <Button type="submit" size="xl" fullWidth loading={record.isPending} disabled={!placeKnown || wrongInspected}>
          {t('record.send')}
        </Button>
      </div>
    </form>
  );
};
