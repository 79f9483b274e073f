import { z } from 'zod';
import { SheetQuestion, SheetUpload } from '../forms/safety-sheet';
import { OPEN_METRICS } from '../metrics/open-metrics';
import { shopFileSchema } from '../shop-file/json-schema';
import {
  FinishedMix,
  ImportAnswer,
  KeepoutAnswer,
  MixAnswer,
  PlanAnswer,
  PreviewAnswer,
  WorkingAnswer,
} from './answers';
import { BuyAnswer, EquivalentsAnswer } from './buying-answers';
import {
  CsvImportAnswer,
  CsvImportBody,
  CsvPreviewAnswer,
  CsvPreviewBody,
  CsvQuestion,
  TemplateQuestion,
} from './csv-bodies';
import { FinishMixBody } from './finish-mix-body';
import { ImportBody, ImportPreviewBody, StopBody } from './import-bodies';
import { Problem } from './problem';
import { ProgramCheckBody } from './program-check-body';
import {
  BuyQuestion,
  EquivalentsQuestion,
  KeepoutQuestion,
  LinkQuestion,
  LogQuestion,
  MixQuestion,
  PlanQuestion,
  ShopQuestion,
  WorkingQuestion,
} from './questions';
import { RecipeCheckBody } from './recipe-check-body';
import { SearchAnswer, SearchQuestion } from './search';
import { SprayPerPlantBody } from './spray-per-plant-body';
import { JudgeAnswer, JudgeBody, NeverSprayedBody, SprayingBody, SprayingTold } from './spraying-bodies';

/** The HTTP API described for programs (OpenAPI 3.1), made from the very contracts that its routes read and answer by. */
export const openApi = () => ({
  openapi: '3.1.0',
  info: {
    title: 'Bench & Bottle',
    version: '1',
    description:
      'One shop’s plan, closed benches and shop file. Every request must name this machine in its Host header; every POST must carry this server’s own Origin. A refusal is a code for programs and a sentence for people, with the places where there are several.',
    license: { name: 'MIT', identifier: 'MIT' },
  },
  servers: [{ url: '/api/v1' }],
  paths: { ...paths(), ...recordPaths(), ...sprayingPaths(), ...checkPaths(), ...csvPaths() },
  components: { schemas: { ...schemas(), ...csvSchemas() } },
});

const paths = () => ({
  '/plan': { get: asked('plan', 'Sprayings, costs, stock and flags ahead', PlanQuestion, 'Plan') },
  '/mix': { get: asked('mix', 'The mix sheet of a recipe: order, amounts, strength, pH, cost', MixQuestion, 'Mix') },
  '/buy': {
    get: asked('buy', 'What to order, when and from whom, beside what two habits would cost', BuyQuestion, 'Buy'),
  },
  '/equivalents': {
    get: asked(
      'equivalents',
      'What could stand in a recipe at the equal dose, and what it costs',
      EquivalentsQuestion,
      'Equivalents',
    ),
  },
  '/keepout': { get: asked('keepout', 'Which benches are closed, and until when', KeepoutQuestion, 'Keepout') },
  '/working': { get: asked('working', 'How a figure of the pages was reached', WorkingQuestion, 'Working') },
  '/search': { get: asked('search', 'Products, bottles, benches and recipes by a text', SearchQuestion, 'Found') },
  '/shop': { get: asked('exportShop', 'The whole shop as a shop file', ShopQuestion, 'ShopFile') },
  '/schema': { get: asked('schema', 'The JSON Schema of a shop file', z.strictObject({}), 'AnyObject') },
  '/openapi.json': { get: asked('openApi', 'This description', z.strictObject({}), 'AnyObject') },
  ...watchPaths(),
  ...shopFilePaths(),
  '/mix/finish': {
    post: sent(
      'finishMix',
      'Finish a mix: draw its stock, write its record, close its benches',
      'FinishMixBody',
      'FinishedMix',
    ),
  },
});

/** What is told of a spraying while it goes on. */
const sprayingPaths = () => ({
  '/mix/spraying': {
    post: sent(
      'tellSpraying',
      'Tell that a spraying was begun, or that its last plant is sprayed: its benches are closed from then on',
      'SprayingBody',
      'SprayingTold',
    ),
  },
  '/mix/judge': {
    post: sent('judgeMix', 'The rules that say stop to a mix sprayed this minute', 'JudgeBody', 'Judged'),
  },
  '/mix/spraying/never': {
    post: sent('denySpraying', 'Say that what was begun never came to be', 'NeverSprayedBody', 'SprayingTold'),
  },
});

/** What is asked by whatever starts the program and watches over it. */
const watchPaths = () => ({
  '/health': { get: asked('health', 'Whether the process answers', z.strictObject({}), 'AnyObject') },
  '/ready': {
    get: asked('ready', 'Whether the shop can answer and take what is sent', z.strictObject({}), 'AnyObject'),
  },
  '/metrics': {
    get: listed('metrics', 'Figures of the running program (OpenMetrics)', z.strictObject({}), OPEN_METRICS),
  },
});

/** What is asked while something is typed: it changes nothing. */
const checkPaths = () => ({
  '/spray-per-plant': { post: sent('sprayPerPlant', 'What one plant takes', 'PerPlantBody', 'AnyObject') },
  '/program-check': {
    post: sent(
      'checkProgram',
      'When benches would be closed by a program while it is typed',
      'ProgramBody',
      'AnyObject',
    ),
  },
  '/recipe-check': {
    post: sent('checkRecipe', 'What a recipe comes to while it is typed', 'RecipeBody', 'AnyObject'),
  },
});

const schemas = () => ({
  Plan: answerSchema(PlanAnswer),
  Mix: answerSchema(MixAnswer),
  Keepout: answerSchema(KeepoutAnswer),
  Buy: answerSchema(BuyAnswer),
  Equivalents: answerSchema(EquivalentsAnswer),
  Working: answerSchema(WorkingAnswer),
  Found: answerSchema(SearchAnswer),
  ShopFile: shopFileSchema(),
  Preview: answerSchema(PreviewAnswer),
  Imported: answerSchema(ImportAnswer),
  Problem: answerSchema(Problem),
  PreviewBody: bodySchema(ImportPreviewBody),
  ImportBody: bodySchema(ImportBody),
  StopBody: bodySchema(StopBody),
  FinishMixBody: bodySchema(FinishMixBody),
  FinishedMix: answerSchema(FinishedMix),
  SprayingBody: bodySchema(SprayingBody),
  NeverSprayedBody: bodySchema(NeverSprayedBody),
  SprayingTold: answerSchema(SprayingTold),
  JudgeBody: bodySchema(JudgeBody),
  Judged: answerSchema(JudgeAnswer),
  ProgramBody: bodySchema(ProgramCheckBody),
  RecipeBody: bodySchema(RecipeCheckBody),
  PerPlantBody: bodySchema(SprayPerPlantBody),
  AnyObject: { type: 'object' },
});

/** Records, and what is kept for whoever helps. */
const recordPaths = () => ({
  '/log': {
    get: asked('log', 'Records of sprayings with every version, and the chain over them', LogQuestion, 'AnyObject'),
  },
  '/log/csv': { get: listed('logList', 'The same as CSV, a line for each product of each version', LogQuestion) },
  '/sheet': {
    get: listed('safetySheet', 'The safety data sheet of a product', SheetQuestion, 'application/pdf'),
    post: {
      ...asked('keepSafetySheet', 'Keep a safety data sheet with a product', SheetUpload, 'AnyObject'),
      requestBody: { required: true, content: { 'application/pdf': { schema: { type: 'string', format: 'binary' } } } },
    },
  },
});

const shopFilePaths = () => ({
  '/shop/preview': { post: sent('previewImport', 'What importing a file would change', 'PreviewBody', 'Preview') },
  '/shop/import': {
    post: sent('importShop', `Import a file, all of it or nothing. ${STEPS}`, 'ImportBody', 'Imported'),
  },
  '/shop/import/stop': {
    post: sent(
      'stopImport',
      'Stop an import that is not being saved yet: then it changes nothing',
      'StopBody',
      'AnyObject',
    ),
  },
});

const csvPaths = () => ({
  '/csv/products.csv': { get: listed('exportProducts', 'The products of a shop as CSV', CsvQuestion) },
  '/csv/offers.csv': { get: listed('exportOffers', 'The offers of a shop as CSV', CsvQuestion) },
  '/csv/lots.csv': { get: listed('exportLots', 'The lots of a shop as CSV', CsvQuestion) },
  '/csv/template.csv': { get: listed('csvTemplate', 'A list to begin with, as CSV', TemplateQuestion) },
  '/calendar.ics': {
    get: listed('calendar', 'Sprayings and keep-out, for calendar programs (RFC 5545)', LinkQuestion, 'text/calendar'),
  },
  '/csv/preview': {
    post: sent('previewCsv', `What a CSV list would change. ${STEPS}`, 'CsvPreviewBody', 'CsvPreview'),
  },
  '/csv/import': { post: sent('importCsv', `Import a CSV list. ${STEPS}`, 'CsvImportBody', 'CsvImported') },
});

const csvSchemas = () => ({
  CsvPreviewBody: bodySchema(CsvPreviewBody),
  CsvImportBody: bodySchema(CsvImportBody),
  CsvPreview: answerSchema(CsvPreviewAnswer),
  CsvImported: answerSchema(CsvImportAnswer),
});

/** A route that can say how far it is. */
const STEPS =
  'Whoever accepts application/x-ndjson gets a line for each step, and last {"status", "answer"} with what is answered otherwise.';

/** A list as comma-separated values (RFC 4180), or another text. */
function listed(operationId: string, summary: string, question: z.ZodObject, type = 'text/csv') {
  const described = asked(operationId, summary, question, 'AnyObject');
  const text = { description: 'Answered.', content: { [type]: { schema: { type: 'string' } } } };
  return { ...described, responses: { ...described.responses, 200: text } };
}

function asked(operationId: string, summary: string, question: z.ZodObject, answer: string) {
  const { properties = {}, required = [] } = z.toJSONSchema(question, { io: 'input', unrepresentable: 'any' });
  const parameters = Object.entries(properties).map(([name, schema]) => ({
    name,
    in: 'query',
    required: required.includes(name),
    schema,
  }));
  return { operationId, summary, parameters, responses: responses(answer) };
}

function sent(operationId: string, summary: string, body: string, answer: string) {
  const requestBody = { required: true, content: jsonOf(body) };
  return { operationId, summary, requestBody, responses: responses(answer) };
}

function responses(answer: string) {
  return {
    200: { description: 'Answered.', content: jsonOf(answer) },
    '4XX': { description: 'Refused: the request, or by the shop. Nothing was changed.', content: jsonOf('Problem') },
    500: { description: 'A fault of the program. The sentence names the line in its log.', content: jsonOf('Problem') },
  };
}

const jsonOf = (name: string) => ({ 'application/json': { schema: { $ref: `#/components/schemas/${name}` } } });

const answerSchema = (contract: z.ZodType) => z.toJSONSchema(contract);
const bodySchema = (contract: z.ZodType) => z.toJSONSchema(contract, { io: 'input' });
