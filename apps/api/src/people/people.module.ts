import { Module } from '@nestjs/common';
import { OwnAccessController } from './own-access.controller.js';
import { OwnAccessService } from './own-access.service.js';
import { PeopleController } from './people.controller.js';
import { PeopleService } from './people.service.js';
import { RosterController } from './roster.controller.js';
import { SessionController } from './session.controller.js';
import { SettingsController } from './settings.controller.js';
import { SignOnController } from './sign-on.controller.js';
import { SignOnService } from './sign-on.service.js';
import { StatusController } from './status.controller.js';

@Module({
  controllers: [
    SessionController,
    OwnAccessController,
    PeopleController,
    RosterController,
    SettingsController,
    SignOnController,
    StatusController,
  ],
  providers: [OwnAccessService, PeopleService, SignOnService],
})
export class PeopleModule {}
