import { Controller } from '@nestjs/common';
import { LabMatchingService } from './lab-matching.service.js';
@Controller('matching')
export class MatchingController {
  constructor(private readonly matching: LabMatchingService) {}
}
