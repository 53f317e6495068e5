import { Link } from 'wouter';
import type { RigView } from '#libs/contract/src/index.js';
import { Empty, Fetched } from '../../ui/faces.js';
import { TitleBlock } from '../../ui/title-block.js';
import { useAsk } from '../../wire/asking.js';

/** What is fitted on each frame right now, from crosshead to base. */
export function RigsScreen() {
  const rigs = useAsk<RigView[]>('items', '/rigs');
  return (
    <>
      <TitleBlock title="Rigs" />
      <Fetched
        of={rigs}
        what="the rigs"
        empty={(value) => value.length === 0 && <Empty>No frame is registered yet.</Empty>}
      >
        {(value) => (
          <table>
            <thead>
              <tr>
                <th>Frame</th>
                <th>Fitted now, from the crosshead down</th>
              </tr>
            </thead>
            <tbody>
              {value.map(({ frame, links }) => (
                <tr key={frame.id}>
                  <th>
                    <Link href={`/register/items/${frame.id}`}>
                      <span className="fig">{frame.tag}</span>
                    </Link>
                    <br />
                    <span className="soft small">{frame.name}</span>
                  </th>
                  <td>
                    {links.length === 0 && <span className="soft">nothing</span>}
                    <ol className="rig-line">
                      {fromTheTop(links).map((link) => (
                        <li key={link.role + link.itemId}>
                          <Link href={`/register/items/${link.itemId}`} className="fig">
                            {link.tag}
                          </Link>
                          <br />
                          <span className="small soft">{link.role.replaceAll('-', ' ')}</span>
                        </li>
                      ))}
                    </ol>
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        )}
      </Fetched>
    </>
  );
}

const ORDER = [
  'load-cell',
  'upper-adapter',
  'upper-adapter-2',
  'upper',
  'ends',
  'faces',
  'lower',
  'lower-adapter',
  'lower-adapter-2',
];

function fromTheTop(links: RigView['links']): RigView['links'] {
  const place = (role: string) => (ORDER.includes(role) ? ORDER.indexOf(role) : ORDER.length);
  return [...links].sort((a, b) => place(a.role) - place(b.role));
}
