import { CloseButton, TextInput } from '@mantine/core';
import { IconSearch } from '@tabler/icons-react';
import { useEffect, useState } from 'react';
import { useTranslation } from 'react-i18next';
import { useFilter } from '#web/ui/filter/use-filter.ts';
import classes from './list.module.css';

/** Full text over notes, numbers, marks and codes; the list follows on Enter. */
export const SearchBox = () => {
  const { t } = useTranslation('failures');
  const [{ q = '' }, change] = useFilter();
  const [typed, setTyped] = useState(q);
  useEffect(() => setTyped(q), [q]);
  const search = (text: string) => change({ q: text.trim() || undefined });

  return (
    <search className={classes.search}>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          search(typed);
        }}
      >
        <TextInput
          aria-label={t('list.search')}
          placeholder={t('list.search')}
          maxLength={200}
          value={typed}
          onChange={(event) => setTyped(event.currentTarget.value)}
          leftSection={<IconSearch size={18} aria-hidden />}
          rightSection={typed && <CloseButton aria-label={t('list.clearSearch')} onClick={() => search('')} />}
          enterKeyHint="search"
        />
      </form>
    </search>
  );
};
