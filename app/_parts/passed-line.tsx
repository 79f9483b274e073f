import { LEFT_OUT } from '@/shared/mix/finish-body';

/** A stop that was passed when a mix was sprayed, or what was left out of it because nothing there measures it; and why. */
export const PassedLine = ({ rule, reason }: { rule: string; reason: string }) => (
  <>
    <b>{rule === LEFT_OUT ? 'Left out' : `Stop passed, ${rule.replaceAll('-', ' ')}`}</b>: {reason}
  </>
);
