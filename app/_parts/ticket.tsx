import type { ReactNode } from 'react';
import type { SprayingTicket } from '@/lib/views/spraying-ticket';
import { showMinutes, showVolume } from '@/shared/measure/show';
import { showClock } from '@/shared/time/show-day';
import { Figure } from './figure';
import { FlagLines } from './flag-lines';
import { Jug } from './jug';
import type { Ways } from './shown-text';
import styles from './ticket.module.css';

type TicketProps = {
  ticket: SprayingTicket;
  ways: Ways;
  /** What can be done with it in this place. */
  children?: ReactNode;
};

/** One planned spraying: the jug, where and how much, what goes in, what it costs, when the benches reopen, what is wrong. */
export function Ticket({ ticket, ways, children }: TicketProps) {
  return (
    <article className={styles.ticket} id={ticket.id} aria-labelledby={`${ticket.id}-name`}>
      <Jug level={ticket.level} liquid={ticket.liquid} />
      <div className={styles.what}>
        <div className={styles.head}>
          <h3 className={styles.name} id={`${ticket.id}-name`}>
            <a className={styles.sheet} href={`/mix/sheet?${ticket.query}`}>
              {ticket.recipe}
            </a>
          </h3>
          <p>
            <b>{showClock(ticket.startsAt, ways.zone)}</b>, <ReopensLine ticket={ticket} ways={ways} />
          </p>
        </div>
        <p className="soft">
          {ticket.benches.join(', ')} · <Figure of={ticket.plants} ways={ways} /> ·{' '}
          <Mixed ticket={ticket} ways={ways} />
        </p>
        <Mix ticket={ticket} ways={ways} />
      </div>
      <Cost ticket={ticket} ways={ways} />
      {ticket.flags.length > 0 && (
        <div className={styles.after}>
          <FlagLines flags={ticket.flags} />
        </div>
      )}
      {children && <div className={styles.after}>{children}</div>}
    </article>
  );
}

function Mixed({ ticket, ways }: TicketProps) {
  return (
    <>
      <Figure of={ticket.spray} ways={ways} />
      {ticket.fills && ticket.eachMl !== null && (
        <>
          {' '}
          in <Figure of={ticket.fills} ways={ways} /> of {showVolume(ticket.eachMl * 1000, ways.units)}
        </>
      )}
    </>
  );
}

function Mix({ ticket, ways }: TicketProps) {
  return (
    <ul className={styles.mix}>
      {ticket.lines.map(({ product, amount, short }) => (
        <li key={amount.at}>
          <a className={styles.product} href={`/shelf/${encodeURIComponent(product.id)}`}>
            {product.name}
          </a>{' '}
          <Figure of={amount} ways={ways} />
          {short && <b className="grave"> short</b>}
        </li>
      ))}
    </ul>
  );
}

function Cost({ ticket, ways }: TicketProps) {
  return (
    <p className={styles.cost}>
      <span>
        <b>
          <Figure of={ticket.materialCost} ways={ways} />
        </b>{' '}
        a batch
      </span>
      <span className="soft">
        <Figure of={ticket.costPerPlant} ways={ways} /> a plant
      </span>
      <span className="soft small">
        labour apart <Figure of={ticket.labourCost} ways={ways} />
      </span>
    </p>
  );
}

function ReopensLine({ ticket, ways }: TicketProps) {
  const { reopening, reopensAt } = ticket;
  const isKnown = reopensAt.value.kind === 'instant';
  return (
    <>
      {isKnown ? 'reopens ' : 'then '}
      <Figure of={reopensAt} ways={ways} />
      <span className="soft">
        {reopening.kind === 'before' && `, ${showMinutes(reopening.minutes)} before opening`}
        {reopening.kind === 'unseen' && ', no customers there'}
      </span>
      {reopening.kind === 'during' && <b>, closed in opening hours</b>}
    </>
  );
}
