import { Select, type SelectProps } from '@mantine/core';

const zones = Intl.supportedValuesOf('timeZone').filter((zone) => zone.includes('/'));

/** IANA time zones, found by typing a city. */
export const ZoneField = (props: SelectProps) => {
  const value = props.value || null;
  const data = value && !zones.includes(value) ? [value, ...zones] : zones;
  return <Select {...props} data={data} value={value} searchable limit={100} allowDeselect={false} />;
};
