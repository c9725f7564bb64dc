/** When a tool is due for service, counted in its own cycles. */
export interface Counted {
  cycleCount: number;
  serviceInterval: number | null;
  servicedAtCount: number;
}
/** `left` is below zero where the service is overdue; null where the tool has no interval. */
export const cyclesLeft = ({ cycleCount, serviceInterval, servicedAtCount }: Counted): number | null =>
  serviceInterval === null ? null : servicedAtCount + serviceInterval - cycleCount;

/** A tenth of the interval ahead of it a service is due soon. Common practice, no source. */
const soonShare = 0.1;
export type ServiceState = 'none' | 'good' | 'soon' | 'overdue';
export const serviceState = (tool: Counted): ServiceState => {
  const left = cyclesLeft(tool);
  if (left === null) return 'none';
  if (left <= 0) return 'overdue';
  return left <= soonShare * (tool.serviceInterval ?? 0) ? 'soon' : 'good';
};
