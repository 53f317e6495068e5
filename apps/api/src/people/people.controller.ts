import { Body, Controller, Delete, Get, Param, ParseUUIDPipe, Patch, Post } from '@nestjs/common';
import type { Page, PersonView, TeamRef } from '#libs/contract/src/index.js';
import { By } from '../platform/by.js';
import { IfMatch } from '../platform/if-match.js';
import { May } from '../platform/may.js';
import type { SignedIn } from '../platform/signed-in.js';
import { AuthorisationDto, ChangePersonDto, NewPersonDto, NewTeamDto } from './people.dto.js';
import { PeopleService } from './people.service.js';

@Controller()
export class PeopleController {
  constructor(private readonly people: PeopleService) {}

  /** Everybody, by name. A lab has few enough people for one page. */
  @Get('people')
  @May('see-people')
  async list(): Promise<Page<PersonView>> {
    return { rows: await this.people.list(), next: null };
  }

  @Get('people/:id')
  @May('see-people')
  view(@Param('id', ParseUUIDPipe) id: string): Promise<PersonView> {
    return this.people.view(id);
  }

  @Post('people')
  @May('edit-people')
  add(@Body() body: NewPersonDto, @By() by: SignedIn): Promise<PersonView> {
    return this.people.add(body, by);
  }

  @Patch('people/:id')
  @May('edit-people')
  change(
    @Param('id', ParseUUIDPipe) id: string,
    @IfMatch() version: number,
    @Body() body: ChangePersonDto,
    @By() by: SignedIn,
  ): Promise<PersonView> {
    return this.people.change(id, version, body, by);
  }

  /** Lets somebody run a method from an instant on. */
  @Post('people/:id/authorisations')
  @May('edit-people')
  authorise(
    @Param('id', ParseUUIDPipe) id: string,
    @Body() body: AuthorisationDto,
    @By() by: SignedIn,
  ): Promise<PersonView> {
    return this.people.authorise(id, body, by);
  }

  @Delete('people/:id/authorisations/:authorisationId')
  @May('edit-people')
  endAuthorisation(
    @Param('id', ParseUUIDPipe) id: string,
    @Param('authorisationId', ParseUUIDPipe) authorisationId: string,
    @By() by: SignedIn,
  ): Promise<PersonView> {
    return this.people.endAuthorisation(id, authorisationId, by);
  }

  @Get('teams')
  @May('see-own')
  async teams(): Promise<Page<TeamRef>> {
    return { rows: await this.people.teams(), next: null };
  }

  @Post('teams')
  @May('edit-people')
  addTeam(@Body() body: NewTeamDto, @By() by: SignedIn): Promise<TeamRef> {
    return this.people.addTeam(body.name, by);
  }

  @Patch('teams/:id')
  @May('edit-people')
  renameTeam(@Param('id', ParseUUIDPipe) id: string, @Body() body: NewTeamDto, @By() by: SignedIn): Promise<TeamRef> {
    return this.people.renameTeam(id, body.name, by);
  }
}
