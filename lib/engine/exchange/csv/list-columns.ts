import { PRODUCT_KINDS } from '@/shared/shop-file/contract';
import { plainDays, plainHours, plainShelfLife } from '@/shared/time/time-written';
import { type Column, type CsvList, column, type Kind, needed } from './column';

const WORDS: Kind = { of: 'words' };
const NUMBER: Kind = { of: 'number' };
const HOURS: Kind = { of: 'number', plain: plainHours };
const DAYS: Kind = { of: 'number', plain: plainDays };
const SHELF_LIFE: Kind = { of: 'number', plain: plainShelfLife };
const MONEY: Kind = { of: 'money' };
const AMOUNT: Kind = { of: 'amount' };
const DAY: Kind = { of: 'day' };
const YES_NO: Kind = { of: 'yesNo' };
const NAMES: Kind = { of: 'names' };

const FORM: Kind = { of: 'choice', words: ['liquid', 'powder'] };
const KIND: Kind = { of: 'choice', words: PRODUCT_KINDS };

const PRODUCTS: Column[] = [
  column('id', 'id', WORDS, ['product id', 'code', 'product code']),
  needed(column('name', 'name', WORDS, ['product', 'product name', 'title'])),
  needed(column('kind', 'kind', KIND, ['type', 'category', 'what for'])),
  needed(column('form', 'form', FORM, ['state', 'liquid or powder'])),
  column('formulation', 'formulation', WORDS, ['formulation class', 'formulation type']),
  column('density g per mL', 'densityGPerMl', NUMBER, ['density', 'density g/mL', 'g/mL', 'density kg/L', 'kg/L']),
  column('grams per teaspoon', 'gramsPerTeaspoon', NUMBER, ['g per teaspoon', 'g/tsp', 'g per tsp', 'teaspoon g']),
  column('contents', 'contents', { of: 'contents' }, ['content', 'ingredients', 'composition', 'active ingredient']),
  column('rates', 'label.rates', { of: 'rates' }, ['rate', 'label rates', 'label rate', 'dose range']),
  column('REI hours', 'label.reiHours', HOURS, ['REI', 'restricted entry', 'restricted entry hours', 're-entry hours']),
  column('PHI days', 'label.phiDays', DAYS, ['PHI', 'pre-harvest days', 'days to harvest']),
  column('max applications per year', 'label.maxApplicationsPerYear', NUMBER, [
    'max per year',
    'applications per year',
  ]),
  column('min days between', 'label.minDaysBetween', DAYS, ['days between', 'interval days', 'minimum interval']),
  column('modes', 'label.modes', NAMES, ['mode', 'mode of action', 'modes of action', 'mode group']),
  column('signal word', 'label.signalWord', WORDS, ['signal']),
  column('protective equipment', 'label.protectiveEquipment', NAMES, ['PPE', 'what to wear']),
  column('spray pH min', 'label.sprayPh.min', NUMBER, ['pH min', 'min pH', 'lowest pH']),
  column('spray pH max', 'label.sprayPh.max', NUMBER, ['pH max', 'max pH', 'highest pH']),
  column('do not mix with', 'label.doNotMixWith', NAMES, ['must not mix with', 'not with', 'incompatible with']),
  column('registration', 'label.registration', WORDS, ['registration number', 'registration no']),
  column('never above °C', 'label.hotAboveC', NUMBER, ['never above', 'not above', 'hot above', 'max temperature C']),
  column('first aid', 'label.firstAid', WORDS, ['first aid statements']),
  column('storage', 'label.storage', WORDS, ['how to store it', 'stored how', 'storage conditions']),
  column('unopened days', 'shelfLife.unopenedDays', SHELF_LIFE, [
    'shelf life unopened',
    'keeps unopened',
    'shelf life days',
  ]),
  column('opened days', 'shelfLife.openedDays', SHELF_LIFE, ['shelf life opened', 'keeps opened', 'days once opened']),
  column('mix order', 'mixOrder', NUMBER, ['mixing order']),
  column('alkali silicate', 'alkaliSilicate', YES_NO),
  column('GTINs', 'gtins', NAMES, ['GTIN', 'bar code', 'bar codes', 'EAN', 'UPC']),
  column('archived', 'archived', YES_NO, ['put away']),
];

const OFFERS: Column[] = [
  column('id', 'id', WORDS, ['offer id', 'offer']),
  needed(
    column('supplier', 'supplier', { of: 'supplier' }, ['supplier id', 'supplier name', 'vendor', 'seller', 'from']),
  ),
  needed(column('product', 'product', { of: 'product' }, ['product id', 'product name', 'name', 'article'])),
  needed(column('pack', 'pack', AMOUNT, ['size', 'pack size', 'container', 'contains', 'unit'])),
  needed(column('price', 'price', MONEY, ['price per pack', 'pack price', 'unit price', 'cost'])),
  column('breaks', 'breaks', { of: 'breaks' }, [
    'break',
    'price breaks',
    'price break',
    'quantity prices',
    'more packs',
  ]),
  column('lead days', 'leadDays', NUMBER, ['lead time', 'lead time days', 'delivery days', 'days to arrive']),
  column('since', 'since', DAY, ['price since', 'valid from', 'price date']),
  column('archived', 'archived', YES_NO, ['put away']),
];

const LOTS: Column[] = [
  column('id', 'id', WORDS, ['lot id', 'lot', 'lot number', 'batch', 'batch number']),
  needed(column('product', 'product', { of: 'product' }, ['product id', 'product name', 'name', 'article'])),
  needed(column('pack', 'pack', AMOUNT, ['size', 'pack size', 'container', 'bottle size', 'holds', 'contains'])),
  column('count', 'count', NUMBER, ['containers', 'bottles', 'quantity', 'qty', 'number', 'how many']),
  column('remaining', 'remaining', AMOUNT, ['left', 'what is left', 'amount left', 'remains']),
  column('paid', 'paid', MONEY, ['price', 'cost', 'price paid', 'total paid']),
  needed(
    column('received on', 'receivedOn', DAY, [
      'received',
      'date received',
      'bought',
      'bought on',
      'arrived',
      'came on',
    ]),
  ),
  column('opened on', 'openedOn', DAY, ['opened', 'date opened']),
  column('expires on', 'expiresOn', DAY, [
    'best before',
    'expiry',
    'expiry date',
    'expires',
    'expiration',
    'use by',
    'last day',
  ]),
  column('kept in', 'keptIn', WORDS, ['place', 'where', 'stands in', 'location', 'stored in']),
];

/** The columns of each list, in the order in which the export writes them. */
export const COLUMNS: Record<CsvList, readonly Column[]> = { products: PRODUCTS, offers: OFFERS, lots: LOTS };
