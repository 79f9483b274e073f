/** What a form sends beside what is typed in it, by name. */
export const HiddenFields = ({ of }: { of: Readonly<Record<string, string | number>> }) =>
  Object.entries(of).map(([name, value]) => <input key={name} type="hidden" name={name} value={value} />);
