/*
 * Passwords that are tried first, of eight signs and more, lower case and without spaces. Put together here from what every
 * published count of leaked passwords has at its top, from memory; rows of keys and repeated signs are found by rule instead.
 */
const WORDS =
  'password passw0rd p@ssw0rd p@ssword pa$$word passwort motdepasse contrasena senha123 iloveyou ilovegod sunshine princess football baseball basketball ' +
  'superman batman123 starwars trustno1 letmein1 letmein123 welcome1 welcome123 whatever computer internet michelle jennifer jessica1 ' +
  'charlie1 michael1 jordan23 liverpool arsenal1 chelsea1 mustang1 corvette mercedes samsung1 blink182 metallica slipknot nirvana1 ' +
  'butterfly chocolate elizabeth victoria alexander valentina estrella dragon123 monkey123 shadow123 master123 hello123 hello1234 ' +
  'freedom1 lovely123 loveme123 babygirl1 babygirl jasmine1 anthony1 matthew1 joshua123 daniel123 thomas123 summer123 winter123 spring123 ' +
  'autumn123 summer2024 summer2025 summer2026 winter2025 spring2026 admin123 administrator administrator1 root1234 changeme changeme1 ' +
  'changeme123 default1 secret123 access14 access123 login123 guest123 test1234 testtest testing1 testing123 user1234 temp1234 ' +
  'abc12345 abcd1234 abcd12345 a1b2c3d4 a1234567 a12345678 1q2w3e4r 1q2w3e4r5t 1qaz2wsx 1qazxsw2 q1w2e3r4 q1w2e3r4t5 qwer1234 qwert123 ' +
  'qwerty123 qwerty12 qwerty1234 qwertyui qazwsxedc zaq12wsx zaq1zaq1 asdf1234 asdfasdf zxcvbnm1 123qwe123 123qweasd 1234qwer ' +
  '12341234 12121212 123123123 11223344 112233445566 87654321 987654321 9876543210 123456789 1234567890 12345678910 147258369 ' +
  '159753456 741852963 789456123 135792468 246813579 20202020 20252025 19841984 19901990 ' +
  'greenhouse garden123 gardening plants123 flowers1 flower123 plantshop spraying spray123 bench123 benchbottle bench&bottle';

/** What remains of each when a 1, a 12, a 123 or a sign of exclamation is put behind it is tried as early. */
const ENDINGS = ['', '1', '12', '123', '!', '1!'];

export const COMMON_PASSWORDS: ReadonlySet<string> = new Set(
  WORDS.split(' ').flatMap((word) => ENDINGS.map((ending) => `${word}${ending}`)),
);
