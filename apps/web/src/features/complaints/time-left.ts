/** Working minutes in the largest unit that says enough: minutes below two hours, else hours. */
export const timeLeft = (minutes: number): { unit: 'minutes' | 'hours'; count: number } => {
  const size = Math.abs(minutes);
  return size < 120 ? { unit: 'minutes', count: size } : { unit: 'hours', count: Math.floor(size / 60) };
};
