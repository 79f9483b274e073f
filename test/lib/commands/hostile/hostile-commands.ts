import { amendApplication } from '@/lib/commands/amend-application';
import { changeShop } from '@/lib/commands/change-shop';
import { confirmAmendment } from '@/lib/commands/confirm-amendment';
import { confirmClock } from '@/lib/commands/confirm-clock';
import { correctLastDay } from '@/lib/commands/correct-last-day';
import { countContainer } from '@/lib/commands/count-container';
import { discardStock } from '@/lib/commands/discard-stock';
import { drawStock } from '@/lib/commands/draw-stock';
import { finishMix } from '@/lib/commands/finish-mix';
import { importCsv } from '@/lib/commands/import-csv';
import { importShopFile } from '@/lib/commands/import-shop-file';
import { keepSafetySheet } from '@/lib/commands/keep-safety-sheet';
import { makeSharedLink } from '@/lib/commands/make-shared-link';
import { makeStockSolution } from '@/lib/commands/make-stock-solution';
import { moveContainer } from '@/lib/commands/move-container';
import { moveSpraying } from '@/lib/commands/move-spraying';
import { noteAlertsSent } from '@/lib/commands/note-alerts-sent';
import { openContainer } from '@/lib/commands/open-container';
import { putAwaySheet } from '@/lib/commands/put-away-sheet';
import { receiveDelivery } from '@/lib/commands/receive-delivery';
import { receiveLot } from '@/lib/commands/receive-lot';
import { receiveOrder } from '@/lib/commands/receive-order';
import { recordApplication } from '@/lib/commands/record-application';
import { removeFromShop } from '@/lib/commands/remove-from-shop';
import { reverseMovement } from '@/lib/commands/reverse-movement';
import { revokeSharedLink } from '@/lib/commands/revoke-shared-link';
import { saveAlertSettings } from '@/lib/commands/save-alert-settings';
import { shutContainer } from '@/lib/commands/shut-container';
import { skipSpraying } from '@/lib/commands/skip-spraying';
import { startShop } from '@/lib/commands/start-shop';
import { database } from '@/lib/data/database';
import { fingerprint } from '@/lib/data/fingerprint';
import { newId } from '@/lib/data/new-id';
import { shopFileOf } from '@/lib/data/snapshot';
import type { Outcome } from '@/shared/outcome';
import type { Stock } from '@/shared/quantity/amounts';
import { exact } from '@/shared/quantity/exact';
import { parseShopFile } from '@/shared/shop-file/parse';
import { CLOCK } from '../../data/fresh-database';
import { TARGET } from './a-hostile-shop';
import { DAMAGE } from './hostile-damage';
import { UNDER_WAY } from './hostile-under-way';
import { type Fields, isoOf } from './hostile-values';

/** Sends one command, with fields of the fuzzer's choice. */
type Send = (any: Fields, shopId: string) => Promise<Outcome<unknown>>;

const MARCH = Date.UTC(2026, 2, 31);
const hour = (number: number): number => MARCH + number * 3_600_000;
const sent = (shopId: string) => ({ commandId: newId(), shopId });
const bottle = (any: Fields) => ({ lotId: any.id('l'), place: any.number<number>(0) });
const lot = (any: Fields) => ({
  ...{
    product: any.id('p'),
    pack: any.size('500 mL'),
    count: any.number<number>(2),
    paid: any.number<never>(5_000_000),
  },
  ...{ expiresOn: any.day('2027-03-31'), keptIn: any.text('shelf') },
});

/** Every command by the name of its file, with all of its fields. */
export const HOSTILE: Record<string, Send> = {
  'amend-application': (any, shopId) => {
    const when = { startedAt: isoOf(any.moment(hour(-800))), endedAt: isoOf(any.moment(hour(-799))) };
    const words = { by: any.text('Ada'), conditions: any.text('calm'), plants: any.text('ferns'), crop: any.text('x') };
    const where = { benches: any.ids(['b']), leftoverWent: any.text('bench'), mixedAt: isoOf(any.moment(hour(-801))) };
    const change = { ...when, ...words, ...where, location: any.text('here'), sprayed: any.size('2 gal') };
    return amendApplication({ ...sent(shopId), application: any.id('a'), change, reason: any.text('wrong') }, CLOCK);
  },
  'change-shop': (any, shopId) => {
    const name = () => any.text('A name');
    const benches = [
      { id: any.id('b3'), name: name(), place: any.text('north'), harvestOn: any.dayText('2026-05-01') },
    ];
    const products = [
      { id: any.id('p2'), name: name(), kind: 'other', form: 'liquid', label: { storage: any.text('cool') } } as const,
    ];
    const shop = { address: any.text('Main Street'), safetyDays: any.number<number>(3), name: name() };
    const programs = TARGET.programs.map((one) => ({ ...one, endsOn: any.dayText('2027-01-01') }));
    return changeShop({ ...sent(shopId), part: { benches, products, shop, programs } }, CLOCK);
  },
  'confirm-amendment': async (any, shopId) => {
    const change = { endedAt: '2026-02-24T22:45:00Z' };
    await amendApplication({ ...sent(shopId), application: 'a', change, reason: 'earlier' }, CLOCK);
    const { reader } = await database();
    const version = await reader.applicationVersion.count({ where: { shopId, applicationId: 'a' } });
    const asked = { application: any.id('a'), version: any.number<number>(version), reason: any.text('asked Ada') };
    return confirmAmendment({ ...sent(shopId), ...asked }, CLOCK);
  },
  'confirm-clock': (any, shopId) => confirmClock({ ...sent(shopId), shownAt: any.moment(hour(9)) }, CLOCK),
  'correct-last-day': (any, shopId) => {
    const day = { expiresOn: any.day('2027-01-01'), reason: any.text('misread') };
    return correctLastDay({ ...sent(shopId), ...bottle(any), ...day }, CLOCK);
  },
  'count-container': (any, shopId) => {
    const found = {
      found: any.number<Stock>(400_000),
      countedAt: any.momentOrNull(hour(8)),
      reason: any.text('spilled'),
    };
    return countContainer({ ...sent(shopId), ...bottle(any), ...found }, CLOCK);
  },
  'discard-stock': (any, shopId) => {
    const what = {
      amount: any.number<Stock>(1_000),
      discardedAt: any.momentOrNull(hour(8)),
      reason: any.text('spoiled'),
    };
    return discardStock({ ...sent(shopId), ...bottle(any), ...what }, CLOCK);
  },
  'draw-stock': (any, shopId) => {
    const what = { amount: any.number<Stock>(1_000), drawnAt: any.momentOrNull(hour(8)), reason: any.text('spot') };
    return drawStock({ ...sent(shopId), ...bottle(any), ...what }, CLOCK);
  },
  'finish-mix': (any, shopId) => {
    const when = { startedAt: any.moment(hour(7)), endedAt: any.moment(hour(8)), mixedAt: any.momentOrNull(hour(6)) };
    const words = {
      by: any.text('Ada'),
      plants: any.text('ferns'),
      conditions: any.text('calm'),
      leftoverWent: any.text('b'),
    };
    const from = [{ ...bottle(any), amount: any.size('6 mL'), heldMore: any.nth(2) === 1 }];
    const poured = [{ product: any.id('p'), from, elsewhere: null }];
    const passed = [{ rule: any.text('rotation'), reason: any.text('needed') }];
    const turn = { program: any.id('g'), on: any.day(TURNS[any.nth(TURNS.length)] ?? '2026-03-31') };
    const rest = {
      sprayed: exact(2000),
      leftover: exact(1),
      temperatureC: any.number<number>(20),
      pH: any.number<number>(6),
    };
    const what = { recipe: any.id('r'), benches: any.ids(['b']), acid: null, plannedCost: any.text('0.94') };
    const planned = any.nth(3) === 0 ? turn : null;
    return finishMix({ ...sent(shopId), ...when, ...words, ...rest, ...what, poured, passed, planned }, CLOCK);
  },
  'import-csv': async (any, shopId) => {
    const line = [any.text('Line'), 'other', 'liquid', any.text('EC')].map((cell) => JSON.stringify(cell)).join(',');
    const asked = { list: 'products' as const, text: `name,kind,form,formulation\n${line}\n`, columns: null };
    const said = { decimals: null, dayOrder: null, createSuppliers: true };
    const seen = fingerprint(await shopFileOf(shopId));
    return importCsv({ ...sent(shopId), asked: { ...asked, ...said }, fingerprint: seen }, CLOCK);
  },
  'import-shop-file': async (any, shopId) => {
    const file = await shopFileOf(shopId);
    const [first, ...rest] = file.applications;
    const record = first && {
      ...first,
      id: `a${any.nth(1_000_000)}`,
      by: any.text('Ada'),
      conditions: any.text('calm'),
    };
    const lots = [{ id: any.id('new'), product: 'p', pack: any.size('1 qt'), receivedOn: any.dayText('2026-03-01') }];
    const written = { ...file, applications: [...(record ? [record] : []), ...(first ? [first] : []), ...rest] };
    const parsed = parseShopFile(JSON.stringify({ ...written, lots: [...file.lots, ...lots] }));
    if (!parsed.ok) return { ok: false, refusal: { code: 'faults', faults: parsed.faults } };
    const into = { shopId, fingerprint: fingerprint(file) };
    return importShopFile({ commandId: newId(), file: parsed.file, into }, CLOCK);
  },
  'keep-safety-sheet': (any, shopId) => {
    const bytes = new TextEncoder().encode('%PDF-1.7\n%%EOF');
    return keepSafetySheet({ ...sent(shopId), product: any.id('p'), fileName: any.text('sheet.pdf'), bytes }, CLOCK);
  },
  'make-shared-link': (_any, shopId) => makeSharedLink({ ...sent(shopId), kind: 'board' }, CLOCK),
  'make-stock-solution': (any, shopId) => {
    const from = [{ ...bottle(any), amount: any.number<Stock>(10_000) }];
    const made = { makeUpTo: { text: any.size('100 mL'), ml: exact(100) }, useByDays: any.number<number>(14) };
    return makeStockSolution(
      { ...sent(shopId), product: any.id('p'), from, ...made, keptIn: any.text('shelf') },
      CLOCK,
    );
  },
  'move-container': (any, shopId) =>
    moveContainer({ ...sent(shopId), ...bottle(any), keptIn: any.text('shed') }, CLOCK),
  'move-spraying': (any, shopId) => {
    const when = { on: any.day('2026-04-14'), to: any.day(`2026-04-${15 + any.nth(5)}`), at: any.number<number>(600) };
    return moveSpraying({ ...sent(shopId), program: any.id('g'), ...when }, CLOCK);
  },
  'note-alerts-sent': (any, shopId) =>
    noteAlertsSent({ shopId, way: 'mail', keys: [`${any.text('k')}${newId()}`] }, CLOCK),
  'open-container': (any, shopId) =>
    openContainer({ ...sent(shopId), lotId: any.id('m'), place: any.nth(3), openedOn: any.day('2026-03-02') }, CLOCK),
  'put-away-sheet': async (any, shopId) => {
    const bytes = new TextEncoder().encode('%PDF-1.7\n%%EOF');
    await keepSafetySheet({ ...sent(shopId), product: 'p', fileName: 'sheet.pdf', bytes }, CLOCK);
    const which = { product: any.id('p'), number: 1 + any.nth(2), isAway: any.nth(2) === 1 };
    return putAwaySheet({ ...sent(shopId), ...which }, CLOCK);
  },
  'receive-delivery': (any, shopId) =>
    receiveDelivery({ ...sent(shopId), receivedOn: any.day('2026-03-30'), lots: [lot(any), lot(any)] }, CLOCK),
  'receive-lot': (any, shopId) =>
    receiveLot({ ...sent(shopId), ...lot(any), receivedOn: any.day('2026-03-30') }, CLOCK),
  'receive-order': (any, shopId) => {
    const came = [
      {
        offer: any.id('o'),
        count: any.number<number>(1),
        paid: null,
        expiresOn: any.day('2027-01-01'),
        keptIn: any.text('s'),
      },
    ];
    const order = { order: any.id('q'), receivedOn: any.day('2026-03-30'), came, restIsOff: any.nth(2) === 1 };
    return receiveOrder({ ...sent(shopId), ...order }, CLOCK);
  },
  'record-application': (any, shopId) => {
    const when = { startedAt: any.moment(hour(7)), endedAt: any.momentOrNull(hour(8)) };
    const by = any.text('Ada');
    return recordApplication(
      { ...sent(shopId), actor: by, recipe: any.id('r'), benches: any.ids(['b']), ...when },
      CLOCK,
    );
  },
  'remove-from-shop': (any, shopId) => {
    const isSupplier = any.nth(2) === 1;
    const what = isSupplier ? ('supplier' as const) : ('product' as const);
    return removeFromShop({ ...sent(shopId), what, id: any.id(isSupplier ? 's2' : 'u') }, CLOCK);
  },
  'reverse-movement': async (any, shopId) => {
    const { reader } = await database();
    const last = await reader.movement.findFirst({ where: { shopId }, orderBy: { number: 'desc' } });
    return reverseMovement({ ...sent(shopId), movement: any.id(last?.id ?? ''), reason: any.text('wrong') }, CLOCK);
  },
  'revoke-shared-link': async (any, shopId) => {
    const made = await makeSharedLink({ ...sent(shopId), kind: 'board' }, CLOCK);
    return revokeSharedLink({ ...sent(shopId), link: any.id(made.ok ? made.value.id : '') }, CLOCK);
  },
  'save-alert-settings': async (any, shopId) => {
    const { reader } = await database();
    const before = await reader.alertSettings.findUnique({ where: { shopId } });
    const mail = {
      ...{
        host: any.text('mail.example.com'),
        port: any.number<number>(587),
        guard: 'tls' as const,
        user: any.text('u'),
      },
      ...{
        from: any.text('a@example.com'),
        to: [any.text('b@example.com')],
        ownNetwork: false,
        password: { new: 'x' },
      },
    } as const;
    const settings = { mail, webhook: null, quiet: { from: any.number<number>(0), until: any.number<number>(60) } };
    return saveAlertSettings({ ...sent(shopId), settings, expecting: before ? String(before.savedAt) : null }, CLOCK);
  },
  'shut-container': (any, shopId) => {
    const at = { lotId: any.id('m'), place: any.nth(3) };
    return shutContainer({ ...sent(shopId), ...at, reason: any.text('another') }, CLOCK);
  },
  'skip-spraying': (any, shopId) => {
    const on = any.day(TURNS[any.nth(TURNS.length)] ?? '2026-03-31');
    return skipSpraying({ ...sent(shopId), program: any.id('g'), on, reason: any.text('rain') }, CLOCK);
  },
  'start-shop': (any) => {
    const settings = {
      name: any.text('New'),
      timeZone: any.text('UTC'),
      currency: any.text('USD'),
      fillCapacity: any.size('2 gal'),
    };
    return startShop({ commandId: newId(), settings }, CLOCK);
  },
  ...UNDER_WAY,
  ...DAMAGE,
};

/** Tuesdays on which the program sprays. */
const TURNS = ['2026-03-03', '2026-03-10', '2026-03-17', '2026-03-24', '2026-03-31', '2026-04-07', '2026-04-21'];
