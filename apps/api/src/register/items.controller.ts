import type { ItemDetail, ItemView, Page, RigView } from '#libs/contract/src/index.js';
import { Body, Controller, Delete, Get, HttpCode, Param, Patch, Post, Put, Query } from '@nestjs/common';
import { AnId } from '../exchange/an-id.js';
import { By } from '../platform/by.js';
import { IfMatch } from '../platform/if-match.js';
import { May } from '../platform/may.js';
import type { SignedIn } from '../platform/signed-in.js';
import { CloseFaultDto, FaultDto, ItemStateDto, ListItemsDto, RigDto, SaveItemDto, WindowDto } from './item.dto.js';
import { ItemsService } from './items.service.js';
import { RigsService } from './rigs.service.js';
import { TroubleService } from './trouble.service.js';

@Controller()
export class ItemsController {
  constructor(
    private readonly items: ItemsService,
    private readonly trouble: TroubleService,
    private readonly rigs: RigsService,
  ) {}

  /** Items by tag. */
  @Get('items')
  @May('see-items')
  list(@Query() asked: ListItemsDto, @By() by: SignedIn): Promise<Page<ItemView>> {
    return this.items.list(asked, by);
  }

  @Get('items/:id')
  @May('see-items')
  view(@Param('id', AnId) id: string): Promise<ItemDetail> {
    return this.items.view(id);
  }

  @Post('items')
  @May('edit-items')
  async register(@Body() body: SaveItemDto, @By() by: SignedIn): Promise<ItemDetail> {
    return this.items.view(await this.items.register(body, by));
  }

  @Patch('items/:id')
  @May('edit-items')
  async change(
    @Param('id', AnId) id: string,
    @IfMatch() version: number,
    @Body() body: SaveItemDto,
    @By() by: SignedIn,
  ): Promise<ItemDetail> {
    await this.items.change(id, version, body, by);
    return this.items.view(id);
  }

  /** Takes an item out of use, declares it faulty, or puts it back in service. */
  @Post('items/:id/state')
  @HttpCode(200)
  @May('edit-items')
  async setState(@Param('id', AnId) id: string, @Body() body: ItemStateDto, @By() by: SignedIn): Promise<ItemDetail> {
    await this.items.setState(id, body, by);
    return this.items.view(id);
  }

  /** Reports a fault: from now on nobody can use the item. */
  @Post('items/:id/faults')
  @May('report-fault')
  async openFault(@Param('id', AnId) id: string, @Body() { what }: FaultDto, @By() by: SignedIn): Promise<ItemDetail> {
    await this.trouble.openFault(id, what, by);
    return this.items.view(id);
  }

  @Post('faults/:id/close')
  @HttpCode(200)
  @May('close-fault')
  async closeFault(
    @Param('id', AnId) id: string,
    @Body() { remedy }: CloseFaultDto,
    @By() by: SignedIn,
  ): Promise<ItemDetail> {
    return this.items.view(await this.trouble.closeFault(id, remedy, by));
  }

  /** A span in which an item is down, lent or away. */
  @Post('items/:id/windows')
  @May('edit-items')
  async addWindow(@Param('id', AnId) id: string, @Body() body: WindowDto, @By() by: SignedIn): Promise<ItemDetail> {
    await this.trouble.addWindow(id, body, by);
    return this.items.view(id);
  }

  @Delete('windows/:id')
  @HttpCode(204)
  @May('edit-items')
  removeWindow(@Param('id', AnId) id: string, @By() by: SignedIn): Promise<void> {
    return this.trouble.removeWindow(id, by);
  }

  /** Every frame with what is fitted on it. */
  @Get('rigs')
  @May('see-items')
  listRigs(): Promise<RigView[]> {
    return this.rigs.list();
  }

  /** Says what is on a frame, as somebody found it. */
  @Put('rigs/:frameId')
  @May('edit-rigs')
  async setRig(
    @Param('frameId', AnId) frameId: string,
    @IfMatch() version: number,
    @Body() body: RigDto,
    @By() by: SignedIn,
  ): Promise<RigView> {
    await this.rigs.set(frameId, version, body, by);
    return (await this.rigs.list()).find(({ frame }) => frame.id === frameId)!;
  }
}
