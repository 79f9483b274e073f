import type { Metadata } from 'next';
import { whoAsksHere } from '@/lib/access/who-asks';
import { clock } from '@/lib/clock';
import { doorPage } from '@/lib/door/door-page';
import { type PeopleScreen, peopleScreen } from '@/lib/views/people';
import { ROLE_WORDS } from '@/shared/access/roles';
import { EmptyPlace } from '../../_parts/empty-place';
import { FirstVisit } from '../../_parts/first-visit';
import styles from './people.module.css';
import { ChangeRole, InvitePerson, LostDevice, OneButton } from './people-forms';

export const metadata: Metadata = { title: 'Who works here' };

async function PeoplePage() {
  const asker = await whoAsksHere();
  const screen = await peopleScreen(clock, asker.kind === 'person' ? asker.person.id : null);
  if (!screen) return <FirstVisit />;
  return (
    <>
      <p>
        <a href="/setup">Setup</a>
      </p>
      <h1>Who works here</h1>
      {asker.kind === 'unowned' ? (
        <EmptyPlace step={{ href: '/sign-in/owner', text: 'Make an owner’s sign-in' }}>
          Nobody signs in here yet. The owner does first, and then decides who else works in {screen.shop.name}.
        </EmptyPlace>
      ) : (
        <People screen={screen} />
      )}
    </>
  );
}

function People({ screen: { shop, people, invitations } }: { screen: PeopleScreen }) {
  return (
    <>
      <section aria-labelledby="people">
        <h2 id="people">In {shop.name}</h2>
        <ul className={styles.people}>
          {people.map((person) => (
            <Person key={person.id} shop={shop.id} person={person} />
          ))}
        </ul>
      </section>
      {invitations.length > 0 && (
        <section aria-labelledby="invited">
          <h2 id="invited">Invited</h2>
          <ul className={styles.people}>
            {invitations.map(({ id, name, role, until, madeBy }) => (
              <li key={id}>
                <p>
                  <b>{name}</b>, {role.toLowerCase()}{' '}
                  <span className="soft">
                    by {madeBy}, holds until {until}
                  </span>
                </p>
                <OneButton of={{ shop: shop.id, invitation: id }} what="take-back" name={name} />
              </li>
            ))}
          </ul>
        </section>
      )}
      <section aria-labelledby="invite">
        <h2 id="invite">Invite somebody</h2>
        <InvitePerson shop={shop.id} />
      </section>
    </>
  );
}

type PersonProps = { shop: string; person: PeopleScreen['people'][number] };

function Person({ shop, person: { id, name, role, isStopped, isYou, devices } }: PersonProps) {
  return (
    <li>
      <p>
        <b>{name}</b>
        {isYou && ' (you)'}{' '}
        <span className={isStopped ? 'grave' : 'soft'}>
          {isStopped ? 'cannot sign in any more' : `${ROLE_WORDS[role].name}: ${ROLE_WORDS[role].may}`}
        </span>
      </p>
      {isStopped ? (
        <OneButton of={{ shop, person: id }} what="let-back" name={name} />
      ) : (
        <details>
          <summary>Change</summary>
          <div className={styles.deeds}>
            <ChangeRole shop={shop} person={id} name={name} role={role} />
            <OneButton of={{ shop, person: id }} what="new-password" name={name} />
            {!isYou && <OneButton of={{ shop, person: id }} what="stop" name={name} />}
          </div>
        </details>
      )}
      {devices.length > 0 && (
        <ul className={styles.devices}>
          {devices.map((device) => (
            <li key={device.id}>
              <span>
                {device.name}{' '}
                <span className="soft">
                  {device.isLost ? 'lost, signed out' : device.isSignedIn ? 'signed in' : 'signed out'}, last used{' '}
                  {device.seen}
                </span>
              </span>
              {!device.isLost && <LostDevice shop={shop} device={device} owner={name} />}
            </li>
          ))}
        </ul>
      )}
    </li>
  );
}

export default doorPage('own', PeoplePage);
