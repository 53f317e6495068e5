import { Column, Entity, ForeignKey, Index, PrimaryColumn } from 'typeorm';
import { PersonEntity } from './person.entity.js';

/** A product team that asks for tests. Its requests are seen by its members, and by nobody else outside the lab. */
@Entity('team')
export class TeamEntity {
  @PrimaryColumn('uuid')
  id!: string;

  @Column({ type: 'text', unique: true })
  name!: string;
}

@Entity('team_member')
export class TeamMemberEntity {
  @PrimaryColumn('uuid')
  @ForeignKey(() => TeamEntity)
  teamId!: string;

  @PrimaryColumn('uuid')
  @ForeignKey(() => PersonEntity)
  @Index()
  personId!: string;
}
