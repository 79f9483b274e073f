import styles from './csv.module.css';
import type { Preview, Said } from './send-list';

type OpenQuestionsProps = { open: Preview['open']; said: Said; onSaid: (said: Said) => void };

/** What a file leaves open, to be answered once for all of it. */
export function OpenQuestions({ open: { decimals, dayOrder, suppliers }, said, onSaid }: OpenQuestionsProps) {
  return (
    <>
      {decimals !== null && (
        <Question
          legend={`A number such as ${decimals} can be two. What divides whole and decimals?`}
          name="decimals"
          answers={[
            ['point', 'a point, as in 12.50'],
            ['comma', 'a comma, as in 12,50'],
          ]}
          answer={said.decimals}
          onAnswer={(mark) => onSaid({ ...said, decimals: mark })}
        />
      )}
      {dayOrder && (
        <Question
          legend={`A day such as ${dayOrder.example} in “${dayOrder.column}” can be two. What comes first?`}
          name="dayOrder"
          answers={[
            ['day-first', 'the day'],
            ['month-first', 'the month'],
          ]}
          answer={said.dayOrder}
          onAnswer={(order) => onSaid({ ...said, dayOrder: order })}
        />
      )}
      {suppliers.length > 0 && (
        <label className="tick">
          <input
            type="checkbox"
            checked={said.createSuppliers}
            onChange={(event) => onSaid({ ...said, createSuppliers: event.target.checked })}
          />
          <span>
            Also make {suppliers.length === 1 ? 'this supplier' : 'these suppliers'}: {suppliers.join(', ')}
          </span>
        </label>
      )}
    </>
  );
}

type QuestionProps<T extends string> = {
  legend: string;
  name: string;
  answers: [answer: T, words: string][];
  answer: T | null;
  onAnswer: (answer: T) => void;
};

function Question<T extends string>({ legend, name, answers, answer, onAnswer }: QuestionProps<T>) {
  return (
    <fieldset className={styles.question}>
      <legend>{legend}</legend>
      {answers.map(([value, words]) => (
        <label key={value} className="tick">
          <input type="radio" name={name} checked={answer === value} onChange={() => onAnswer(value)} />
          {words}
        </label>
      ))}
    </fieldset>
  );
}
