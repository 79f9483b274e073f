import type { Metadata } from 'next';
import { clock } from '@/lib/clock';
import { doorPage } from '@/lib/door/door-page';
import { labelsScreen } from '@/lib/views/labels';
import { EmptyPlace } from '../../_parts/empty-place';
import { FirstVisit } from '../../_parts/first-visit';
import { PaperSheets } from '../../_parts/paper-sheets';
import type { Search } from '../../_parts/search';
import { LabelSheet } from './label-sheet';
import { LabelsForm } from './labels-form';

export const metadata: Metadata = { title: 'Labels' };

async function LabelsPage({ searchParams }: { searchParams: Promise<Search> }) {
  const screen = await labelsScreen(clock, await searchParams);
  if (!screen) return <FirstVisit />;
  const { choices, sheets, sheet } = screen;
  const count = choices.filter(({ chosen }) => chosen).length;
  return (
    <>
      <div className="unprinted">
        <p>
          <a href="/shelf">Shelf</a>
        </p>
        <h1>Labels</h1>
        <p className="soft">
          A label for each bottle, with a square code that opens it: scan it under <a href="/shelf/scan">Scan</a>. It
          says which bottle this is; what may be done with it stands on the product’s own label.
        </p>
        {choices.length === 0 ? (
          <EmptyPlace step={{ href: '/shelf/receive', text: 'Receive a bottle' }}>
            Labels for the bottles on the shelf. There is no bottle with anything in it yet.
          </EmptyPlace>
        ) : (
          <LabelsForm screen={screen} />
        )}
        {choices.length > 0 && (
          <h2>
            {count === 0 ? 'No bottle is chosen' : `${counted(count, 'label')} on ${counted(sheets.length, 'sheet')}`}
          </h2>
        )}
      </div>
      <PaperSheets size={sheet}>
        {sheets.map((labels, number) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a sheet is nothing but its number.
          <LabelSheet key={number} labels={labels} />
        ))}
      </PaperSheets>
    </>
  );
}

const counted = (count: number, what: string): string => `${count} ${what}${count === 1 ? '' : 's'}`;

export default doorPage('see-shop', LabelsPage);
