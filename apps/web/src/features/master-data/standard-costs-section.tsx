import { Button, Select, TextInput } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { useNavigate } from '@tanstack/react-router';
import { useState } from 'react';
import { useTranslation } from 'react-i18next';
import type { Plant } from '#contracts/master-data.ts';
import { EmptyNote } from '#web/ui/empty-note.tsx';
import { useFormat } from '#web/ui/language.ts';
import { rowText, usePlants } from '#web/ui/lookup.ts';
import { dayIn } from '#web/ui/period.ts';
import { useMay } from '#web/ui/person.ts';
import { QueryBoundary } from '#web/ui/query-boundary.tsx';
import { CostForm } from './cost-form.tsx';
import { CostGrid } from './cost-grid.tsx';
import { viewOf } from './kinds.ts';
import classes from './master-data.module.css';
import { plantCostsQuery } from './queries.ts';
import { kindRoute } from './routes.ts';
import { RowDrawer } from './row-drawer.tsx';
import { datesOf, inEffect } from './standard-costs.ts';

const view = viewOf('standard-costs');

/** Standard costs as a table of stage × disposition: what holds at a plant on a day, and how to change it from a day on. */
export const StandardCostsSection = () => {
  const { t } = useTranslation('master-data');
  const plants = usePlants();
  const { plant: asked } = kindRoute.useSearch();
  const plant = plants.find(({ id }) => id === asked?.[0]) ?? plants[0];
  if (!plant) return <EmptyNote title={t('noPlant')}>{t('noPlantText')}</EmptyNote>;
  return <PlantCosts key={plant.id} plant={plant} plants={plants} />;
};

const PlantCosts = ({ plant, plants }: { plant: Plant; plants: readonly Plant[] }) => {
  const { t } = useTranslation('master-data');
  const format = useFormat();
  const navigate = useNavigate();
  const { on = dayIn(plant.zone, new Date()), row } = kindRoute.useSearch();
  const [editing, setEditing] = useState(false);
  const mayChange = useMay('plantData.write', plant.id) && !plant.retiredAt;
  const costs = useQuery(plantCostsQuery(plant.id));
  const change = (patch: object) =>
    void navigate({ to: '.', search: ((now: object) => ({ ...now, ...patch })) as never, resetScroll: false });

  return (
    <>
      <div className={classes.tools}>
        <Select
          label={t('field.plantId')}
          data={plants.map((it) => ({ value: it.id, label: rowText(it) }))}
          value={plant.id}
          allowDeselect={false}
          onChange={(id) => change({ plant: id ? [id] : undefined, row: undefined })}
        />
        {!editing && (
          <TextInput
            type="date"
            label={t('costs.on')}
            value={on}
            onChange={(event) => change({ on: event.currentTarget.value || undefined })}
          />
        )}
        {mayChange && !editing && (
          <Button ml="auto" onClick={() => setEditing(true)}>
            {t('costs.change')}
          </Button>
        )}
      </div>
      <QueryBoundary query={costs} height={28}>
        {(rows) =>
          editing ? (
            <CostForm plant={plant} rows={rows} firstDay={on} onDone={() => setEditing(false)} />
          ) : (
            <>
              {datesOf(rows).length === 0 && <EmptyNote title={t('none')}>{t('costs.noneText')}</EmptyNote>}
              {datesOf(rows).length > 0 && (
                <>
                  <p className={classes.quiet}>
                    {t('costs.dates', { dates: format.list(datesOf(rows).map((day) => format.day(day))) })}
                  </p>
                  <CostGrid plant={plant} held={inEffect(rows, on)} day={on} onOpen={(id) => change({ row: id })} />
                </>
              )}
            </>
          )
        }
      </QueryBoundary>
      {row && row !== 'new' && <RowDrawer key={row} view={view} id={row} onClose={() => change({ row: undefined })} />}
    </>
  );
};
